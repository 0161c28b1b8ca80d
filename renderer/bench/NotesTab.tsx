import { useState } from 'react';
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
  // What is typed stands while it is typed; else what is kept, which undo and the quick note change as well.
  const [typed, setTyped] = useState<{ note?: string; privateNote?: string }>({});
  const change = (patch: { note?: string; privateNote?: string }) => {
    setTyped((old) => ({ ...old, ...patch }));
    set(patch);
  };
  const leave = () => setTyped({});
  return (
    <div className={styles.notes}>
      <TextField
        label={screens.bench.noteHere}
        rows={4}
        value={typed.note ?? entry.note}
        onChange={(note) => change({ note })}
        onBlur={leave}
        maxLength={20_000}
      />
      <TextField
        label={screens.bench.privateNote}
        rows={4}
        value={typed.privateNote ?? entry.privateNote}
        onChange={(privateNote) => change({ privateNote })}
        onBlur={leave}
        maxLength={20_000}
      />
    </div>
  );
}
