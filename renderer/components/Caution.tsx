import type { ReactNode } from 'react';
import styles from './Caution.module.css';

/** A caution, set where the decision is made. */
export function Caution({ children }: { children: ReactNode }) {
  return <p className={styles.caution}>{children}</p>;
}
