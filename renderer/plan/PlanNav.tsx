import { planSheets, useShow, useView } from '../app/view.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './PlanNav.module.css';

/** `isAlone` where nothing stands below it in its column. */
export function PlanNav({ isAlone = false }: { isAlone?: boolean }) {
  const { screens } = useWords();
  const view = useView();
  const show = useShow();
  return (
    <nav className={cx(styles.sheets, isAlone && styles.alone)} aria-label={screens.plan.title}>
      <p className={styles.title}>{screens.plan.title}</p>
      {planSheets.map((id) => (
        <button
          key={id}
          type="button"
          className={cx(styles.sheet, id === view.planSheet && styles.here)}
          aria-current={id === view.planSheet ? 'true' : undefined}
          onClick={() => show({ planSheet: id })}
        >
          {screens.planSheets.titles[id]}
        </button>
      ))}
    </nav>
  );
}
