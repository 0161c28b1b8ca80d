import type { Snapshot } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './LogRemarks.module.css';
import { logRemarks } from './log-remarks.ts';

export type LogRemarksProps = { readonly snapshot: Snapshot; readonly entries: readonly Entry[] };

/** Names that are written out before they are only counted. */
const mostNames = 3;

/** What was found while the logs of these entries were read, and what of them could not be used. */
export function LogRemarks({ snapshot, entries }: LogRemarksProps) {
  const { screens, note, problem } = useWords();
  const ids = new Set(entries.flatMap((e) => e.runs.map((r) => r.runId)));
  const remarks = logRemarks(
    snapshot.runs.filter((r) => ids.has(r.record.id)),
    { note, problem },
  );
  if (remarks.length === 0) return null;
  return (
    <section className={styles.remarks}>
      <h2 className={styles.title}>{screens.columns.found}</h2>
      <ul>
        {remarks.map(({ logs, text, remedy }) => (
          <li key={text}>
            {logs.slice(0, mostNames).join(', ')}
            {logs.length > mostNames && ` +${logs.length - mostNames}`}:{' '}
            {remedy === null ? text : <strong className={styles.problem}>{text}</strong>} {remedy}
          </li>
        ))}
      </ul>
    </section>
  );
}
