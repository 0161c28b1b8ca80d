import { ChevronDown } from 'lucide-react';
import {
  Select as AriaSelect,
  Button,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  SelectValue,
  Text,
} from 'react-aria-components';
import { cx } from '../design/cx.ts';
import field from './Field.module.css';
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

export function Select<T extends string>(props: SelectProps<T>) {
  const { label, isLabelHidden = false, options, value, onChange, placeholder, hint } = props;
  return (
    <AriaSelect
      value={value}
      onChange={(key) => {
        const chosen = options.find((o) => o.id === key);
        if (chosen) onChange(chosen.id);
      }}
      isDisabled={props.isDisabled ?? false}
      placeholder={placeholder ?? ''}
      className={cx(field.field)}
      {...(isLabelHidden ? { 'aria-label': label } : {})}
    >
      {!isLabelHidden && <Label className={cx(field.label)}>{label}</Label>}
      <Button className={cx(field.input, styles.button)}>
        <SelectValue className={cx(styles.value)} />
        <ChevronDown aria-hidden />
      </Button>
      {hint && (
        <Text slot="description" className={cx(field.hint)}>
          {hint}
        </Text>
      )}
      <Popover className={cx(styles.popover)}>
        <ListBox className={cx(styles.list)} items={options}>
          {(option) => (
            <ListBoxItem id={option.id} textValue={option.label} className={cx(styles.item)}>
              <Text slot="label">{option.label}</Text>
              {option.hint && (
                <Text slot="description" className={cx(styles.itemHint)}>
                  {option.hint}
                </Text>
              )}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </AriaSelect>
  );
}
