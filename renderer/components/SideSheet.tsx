import type { ReactNode } from 'react';
import styles from './SideSheet.module.css';

export type SideSheetProps = {
  readonly label: string;
  /** The small word above the title. */
  readonly kicker: string;
  readonly title: string;
  readonly why?: string;
  readonly children?: ReactNode;
};

/** The sheet at the right of every screen: one thing, why, and what to do about it. */
export function SideSheet({ label, kicker, title, why, children }: SideSheetProps) {
  return (
    <aside className={styles.sheet} aria-label={label}>
      <p className={styles.kicker}>{kicker}</p>
      <h2 className={styles.title}>{title}</h2>
      {why && <p className={styles.why}>{why}</p>}
      {children}
    </aside>
  );
}
