import type { Problem } from '../../core/result/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './ProblemList.module.css';

/** What went wrong and how to mend it, one entry a problem. */
export function ProblemList({ problems }: { problems: readonly Problem[] }) {
  const { problem } = useWords();
  return (
    // The list keeps its own role: a list that is an alert has items without a list.
    <div role="alert">
      <ul className={styles.list}>
        {problems.map((p) => {
          const said = problem(p);
          return (
            <li key={`${p.code} ${said.message}`}>
              <p className={styles.message}>{said.message}</p>
              <p className={styles.remedy}>{said.remedy}</p>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
