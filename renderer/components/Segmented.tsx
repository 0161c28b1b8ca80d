import { Label, Radio, RadioGroup } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import field from './Field.module.css';
import styles from './Segmented.module.css';

export type SegmentedProps<T extends string> = {
  readonly label: string;
  /** For a choice whose meaning its neighbour already says. */
  readonly isLabelHidden?: boolean;
  readonly options: readonly { readonly id: T; readonly label: string }[];
  readonly value: T | null;
  readonly onChange: (value: T) => void;
};

/** One of a few, all in sight. */
export function Segmented<T extends string>({
  label,
  isLabelHidden = false,
  options,
  value,
  onChange,
}: SegmentedProps<T>) {
  return (
    <RadioGroup
      value={value ?? ''}
      onChange={(v) => onChange(v as T)}
      orientation="horizontal"
      className={cx(field.field)}
      {...(isLabelHidden ? { 'aria-label': label } : {})}
    >
      {!isLabelHidden && <Label className={cx(field.label)}>{label}</Label>}
      <div className={styles.row}>
        {options.map((option) => (
          <Radio key={option.id} value={option.id} className={cx(styles.option)}>
            {option.label}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
