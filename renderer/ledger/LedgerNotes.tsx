import type { Note } from '../../core/result/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './LedgerNotes.module.css';

/** What the whole day says: a drift that was found, an earlier entry that should be driven again. */
export function LedgerNotes({ notes }: { notes: readonly Note[] }) {
  const { note } = useWords();
  if (notes.length === 0) return null;
  return (
    <ul className={styles.notes}>
      {notes.map((n) => (
        <li key={n.code}>{note(n)}</li>
      ))}
    </ul>
  );
}
