import type { ReactNode } from 'react';
import styles from './EmptyState.module.css';

export type EmptyStateProps = {
  readonly title: string;
  readonly why: string;
  readonly children?: ReactNode;
};

/** A place that waits for something: what it waits for, and the way to give it. */
export function EmptyState({ title, why, children }: EmptyStateProps) {
  return (
    <div className={styles.empty}>
      <h2 className={styles.title}>{title}</h2>
      <p className={styles.why}>{why}</p>
      {children}
    </div>
  );
}
