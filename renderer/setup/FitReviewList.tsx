import { fitOf } from '../../core/injection/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import { setupOf } from '../sheets/sheet-doc.ts';
import type { Sheet } from '../sheets/use-sheet.ts';
import styles from './FitReviewList.module.css';
import { FitRule } from './FitRule.tsx';

/** Every rule of the fit that applies to this car, heaviest first. */
export function FitReviewList({ sheet }: { sheet: Sheet }) {
  const { screens } = useWords();
  const review = fitOf(setupOf(sheet.doc));
  const said = screens.setup.fit;
  const open = review.beforeDriving.length + review.soon.length;
  return (
    <>
      <p className={styles.count} role="status">
        {open === 0 ? said.done : said.open(open)}
      </p>
      <ul className={styles.list}>
        {review.items.map((item) => (
          <FitRule
            key={item.id}
            item={item}
            answer={sheet.doc.fit[item.id] ?? null}
            onAnswer={(a) => sheet.put(`fit.${item.id}`, a)}
          />
        ))}
      </ul>
    </>
  );
}
