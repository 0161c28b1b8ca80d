import type { Entry } from '../../core/session/index.ts';
import { TextField } from '../components/TextField.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './NotesTab.module.css';

/** Notes on an entry, kept as they are typed; the private one is never printed. */
export function NotesTab({ entry }: { entry: Entry }) {
  const { screens } = useWords();
  const { edit } = useSession();
  const set = (patch: { note?: string; privateNote?: string }) =>
    void edit({ type: 'entry.set', entryId: entry.id, patch }, `${entry.id} ${Object.keys(patch)[0]}`);
  return (
    <div className={styles.notes}>
      <TextField
        label={screens.bench.noteHere}
        rows={4}
        defaultValue={entry.note}
        onChange={(note) => set({ note })}
        maxLength={20_000}
      />
      <TextField
        label={screens.bench.privateNote}
        rows={4}
        defaultValue={entry.privateNote}
        onChange={(privateNote) => set({ privateNote })}
        maxLength={20_000}
      />
    </div>
  );
}
