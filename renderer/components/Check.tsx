import { Check as Tick } from 'lucide-react';
import { Checkbox } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import styles from './Check.module.css';

export type CheckProps = {
  readonly label: string;
  readonly isSelected: boolean;
  readonly onChange: (isSelected: boolean) => void;
};

export function Check({ label, isSelected, onChange }: CheckProps) {
  return (
    <Checkbox isSelected={isSelected} onChange={onChange} className={cx(styles.check)}>
      <span className={styles.box}>{isSelected && <Tick aria-hidden />}</span>
      {label}
    </Checkbox>
  );
}
