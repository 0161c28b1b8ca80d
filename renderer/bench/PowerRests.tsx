import type { Snapshot } from '../../core/contract/index.ts';
import { type Entry, powerRemarks } from '../../core/session/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './PowerRests.module.css';

export type PowerRestsProps = { readonly snapshot: Snapshot; readonly entries: readonly Entry[] };

/** What was taken for the powers of these entries where nobody told it, and what is doubtful about them. */
export function PowerRests({ snapshot, entries }: PowerRestsProps) {
  const { screens, note } = useWords();
  const ids = new Set(entries.flatMap((e) => e.runs.map((r) => r.runId)));
  const runs = snapshot.runs.filter((r) => ids.has(r.record.id));
  const remarks = powerRemarks(runs.flatMap((r) => r.powerNotes)).map(note);
  if (remarks.length === 0) return null;
  return (
    <section className={styles.rests}>
      <h2 className={styles.title}>{screens.bench.powerRests}</h2>
      <ul>
        {remarks.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}
