import { cx } from '../design/cx.ts';
import styles from './SheetNav.module.css';

export type SheetNavProps<Id extends string> = {
  readonly title: string;
  readonly sheets: readonly { readonly id: Id; readonly title: string }[];
  readonly here: Id;
  readonly onOpen: (id: Id) => void;
  /** Where nothing stands below it in its column. */
  readonly isAlone?: boolean;
};

/** The sheets of a screen, one below the other, the open one marked. */
export function SheetNav<Id extends string>({
  title,
  sheets,
  here,
  onOpen,
  isAlone = false,
}: SheetNavProps<Id>) {
  return (
    <nav className={cx(styles.sheets, isAlone && styles.alone)} aria-label={title}>
      <p className={styles.title}>{title}</p>
      {sheets.map((sheet) => (
        <button
          key={sheet.id}
          type="button"
          className={cx(styles.sheet, sheet.id === here && styles.here)}
          aria-current={sheet.id === here ? 'true' : undefined}
          onClick={() => onOpen(sheet.id)}
        >
          {sheet.title}
        </button>
      ))}
    </nav>
  );
}
