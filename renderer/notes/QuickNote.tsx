import { useEffect, useRef, useState } from 'react';
import { entryTitle } from '../../core/words/index.ts';
import { Button } from '../components/Button.tsx';
import { TextField } from '../components/TextField.tsx';
import { useSelection } from '../hooks/use-selection.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './QuickNote.module.css';
import { withQuickNote } from './quick-note.ts';

/** One line at the foot of the window: Enter keeps it with the entry and the time, Escape leaves it. */
export function QuickNote({ onClose }: { onClose: () => void }) {
  const { screens, show } = useWords();
  const { snapshot, edit } = useSession();
  const { after: entry } = useSelection();
  const { say } = useToasts();
  const [text, setText] = useState('');
  const cameFrom = useRef(document.activeElement);
  useEffect(() => () => (cameFrom.current instanceof HTMLElement ? cameFrom.current.focus() : undefined), []);
  const said = screens.bench.quickNote;
  if (!snapshot || !entry) return null;
  const name = `${snapshot.session.ledger.indexOf(entry)} · ${entryTitle(entry, show)}`;
  const keep = async () => {
    if (text.trim() === '') return onClose();
    // Private: what is jotted down between two pulls is not meant for a customer's eyes.
    const privateNote = withQuickNote(entry.privateNote, text, new Date());
    if (await edit({ type: 'entry.set', entryId: entry.id, patch: { privateNote } })) say(said.kept(name));
    onClose();
  };
  return (
    <section className={styles.bar} aria-label={said.title}>
      <div className={styles.field}>
        <TextField
          label={said.on(name)}
          value={text}
          onChange={setText}
          autoFocus
          maxLength={2000}
          onKeyDown={(event) => {
            if (event.key === 'Enter') void keep();
            if (event.key === 'Escape') onClose();
          }}
        />
      </div>
      <Button look="main" onPress={() => void keep()}>
        {said.keep}
      </Button>
      <Button onPress={onClose}>{screens.shell.cancel}</Button>
    </section>
  );
}
