import { useSelection } from '../hooks/use-selection.ts';
import { useSession } from '../hooks/use-session.tsx';
import styles from './BenchScreen.module.css';
import { Comparison } from './Comparison.tsx';
import { SingleEntry } from './SingleEntry.tsx';
import { Waiting } from './Waiting.tsx';

/** Two entries laid over each other, or what is still missing for that. */
export function BenchScreen() {
  const { snapshot } = useSession();
  const { before, after } = useSelection();
  if (!snapshot || !after) return null;
  const isWaiting = after.runs.length === 0;
  return (
    <main className={styles.bench} id="main" tabIndex={-1}>
      {isWaiting ? (
        <Waiting entry={after} snapshot={snapshot} />
      ) : before ? (
        <Comparison key={`${before.id}>${after.id}`} before={before} after={after} snapshot={snapshot} />
      ) : (
        <SingleEntry entry={after} snapshot={snapshot} />
      )}
    </main>
  );
}
