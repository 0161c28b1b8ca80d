import { ChevronDown } from 'lucide-react';
import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { cx } from '../design/cx.ts';
import field from './Field.module.css';
import { OptionList } from './OptionList.tsx';
import styles from './Select.module.css';

export type Option<T extends string> = { readonly id: T; readonly label: string; readonly hint?: string };

export type SelectProps<T extends string> = {
  readonly label: string;
  /** For a select whose meaning its neighbour already says. */
  readonly isLabelHidden?: boolean;
  readonly options: readonly Option<T>[];
  readonly value: T | null;
  readonly onChange: (value: T) => void;
  readonly placeholder?: string;
  readonly hint?: string | undefined;
  readonly isDisabled?: boolean;
};

/**
 * One of several, in a list that drops down. Closed it is one button and nothing else: a sheet of the setup
 * holds fifty of them. Left and right choose without opening it.
 */
export function Select<T extends string>(props: SelectProps<T>) {
  const { label, isLabelHidden = false, options, value, onChange, placeholder, hint } = props;
  const [isOpen, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const id = useId();
  const at = options.findIndex((o) => o.id === value);
  const chosen = options[at];
  const close = () => {
    setOpen(false);
    button.current?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    const next = by && options[Math.max(0, at + by)];
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') setOpen(true);
    else if (next) onChange(next.id);
    else return;
    event.preventDefault();
  };
  return (
    <div className={field.field}>
      {!isLabelHidden && (
        <label id={`${id}-label`} htmlFor={id} className={field.label}>
          {label}
        </label>
      )}
      <button
        ref={button}
        id={id}
        type="button"
        disabled={props.isDisabled ?? false}
        aria-haspopup="listbox"
        aria-expanded={isOpen}
        aria-label={isLabelHidden ? label : undefined}
        aria-labelledby={`${id}-value ${isLabelHidden ? id : `${id}-label`}`}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onClick={() => setOpen(!isOpen)}
        onKeyDown={onKeyDown}
        className={cx(field.input, styles.button)}
      >
        <span id={`${id}-value`} className={cx(styles.value, !chosen && styles.none)}>
          {chosen?.label ?? placeholder ?? ''}
        </span>
        <ChevronDown aria-hidden />
      </button>
      {hint && (
        <span id={`${id}-hint`} className={field.hint}>
          {hint}
        </span>
      )}
      {isOpen && (
        <OptionList
          label={label}
          anchor={button}
          options={options}
          at={at}
          onChoose={(option) => {
            close();
            onChange(option.id);
          }}
          onClose={close}
        />
      )}
    </div>
  );
}
