import type { Entry } from '../../core/session/index.ts';
import { TextField } from '../components/TextField.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useTypedText } from '../hooks/use-typed-text.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './NotesTab.module.css';

/** Notes on an entry, kept as they are typed; the private one is never printed. */
export function NotesTab({ entry }: { entry: Entry }) {
  const { screens } = useWords();
  const { edit } = useSession();
  const keep = (part: 'note' | 'privateNote') => (text: string) =>
    edit({ type: 'entry.set', entryId: entry.id, patch: { [part]: text } }, `${entry.id} ${part}`);
  const note = useTypedText(entry.note, keep('note'));
  const privateNote = useTypedText(entry.privateNote, keep('privateNote'));
  return (
    <div className={styles.notes}>
      <TextField label={screens.bench.noteHere} rows={4} maxLength={20_000} {...note} />
      <TextField label={screens.bench.privateNote} rows={4} maxLength={20_000} {...privateNote} />
    </div>
  );
}
