import { type ComponentProps, useId } from 'react';
import { cx } from '../design/cx.ts';
import styles from './Field.module.css';
import { controlProps, FieldFrame } from './FieldFrame.tsx';

type Control = ComponentProps<'input'> & ComponentProps<'textarea'>;

export type TextFieldProps = Pick<
  Control,
  'value' | 'defaultValue' | 'maxLength' | 'onBlur' | 'onKeyDown' | 'inputMode' | 'autoFocus' | 'placeholder'
> & {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly onChange?: (text: string) => void;
  readonly isDisabled?: boolean;
  /** More than one line of text. */
  readonly rows?: number;
  /** Many short things on one line: smaller letters, so that all are in sight. */
  readonly isDense?: boolean;
};

/** Plain elements: a sheet holds dozens of them, and each is drawn again with every key. */
export function TextField(props: TextFieldProps) {
  const { label, hint, error, onChange, isDisabled, rows, placeholder, isDense, ...control } = props;
  const id = useId();
  const shared = {
    ...control,
    ...controlProps({ id, hint, error }),
    placeholder: placeholder ?? '',
    disabled: isDisabled ?? false,
    onChange: (event: { target: { value: string } }) => onChange?.(event.target.value),
  };
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      {rows ? (
        <textarea {...shared} rows={rows} className={cx(styles.input, styles.area)} />
      ) : (
        <input {...shared} type="text" className={cx(styles.input, isDense && styles.dense)} />
      )}
    </FieldFrame>
  );
}
