import { useId } from 'react';
import field from './Field.module.css';
import styles from './Segmented.module.css';
import { SteadyText } from './SteadyText.tsx';

export type SegmentedProps<T extends string> = {
  readonly label: string;
  /** For a choice whose meaning its neighbour already says. */
  readonly isLabelHidden?: boolean;
  readonly options: readonly { readonly id: T; readonly label: string }[];
  readonly value: T | null;
  readonly onChange: (value: T) => void;
};

/** One of a few, all in sight. */
export function Segmented<T extends string>(props: SegmentedProps<T>) {
  const { label, isLabelHidden = false, options, value, onChange } = props;
  const id = useId();
  return (
    <div className={field.field} role="radiogroup" aria-labelledby={id}>
      <span id={id} className={isLabelHidden ? 'visually-hidden' : field.label}>
        {label}
      </span>
      <div className={styles.row}>
        {options.map((option) => (
          <label key={option.id} className={styles.option}>
            <input
              type="radio"
              name={id}
              value={option.id}
              checked={option.id === value}
              onChange={() => onChange(option.id)}
              className="visually-hidden"
            />
            <SteadyText>{option.label}</SteadyText>
          </label>
        ))}
      </div>
    </div>
  );
}
