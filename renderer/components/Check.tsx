import { Check as Tick } from 'lucide-react';
import styles from './Check.module.css';

export type CheckProps = {
  readonly label: string;
  readonly isSelected: boolean;
  readonly onChange: (isSelected: boolean) => void;
};

export function Check({ label, isSelected, onChange }: CheckProps) {
  return (
    <label className={styles.check}>
      <input
        type="checkbox"
        checked={isSelected}
        onChange={(event) => onChange(event.target.checked)}
        className="visually-hidden"
      />
      <span className={styles.box}>{isSelected && <Tick aria-hidden />}</span>
      {label}
    </label>
  );
}
