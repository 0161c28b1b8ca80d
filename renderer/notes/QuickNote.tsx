import { useEffect, useRef, useState } from 'react';
import { entryTitle } from '../../core/words/index.ts';
import { Button } from '../components/Button.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { useLeave } from '../components/use-leave.tsx';
import { useSelection } from '../hooks/use-selection.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './QuickNote.module.css';
import { withQuickNote } from './quick-note.ts';

/**
 * One line at the foot of the window: Enter keeps it with the entry and the time, Escape leaves it. The page beside it
 * can be used; where that puts something else in its place, the line is kept.
 */
export function QuickNote({ onClose }: { onClose: () => void }) {
  const { screens, show } = useWords();
  const { snapshot, edit } = useSession();
  const { after: entry } = useSelection();
  const { say } = useToasts();
  const [text, setText] = useState('');
  const cameFrom = useRef(document.activeElement);
  useEffect(() => () => (cameFrom.current instanceof HTMLElement ? cameFrom.current.focus() : undefined), []);
  const said = screens.bench.quickNote;
  const name = entry && snapshot && `${snapshot.session.ledger.indexOf(entry)} · ${entryTitle(entry, show)}`;
  /** Nothing waits to be kept any more: it is on its way, or was given up. */
  const isOver = useRef(false);
  const keep = async (): Promise<boolean> => {
    if (!entry || !name || isOver.current || text.trim() === '') return true;
    isOver.current = true;
    // Private: what is jotted down between two pulls is not meant for a customer's eyes.
    const privateNote = withQuickNote(entry.privateNote, text, new Date());
    const isKept = await edit({ type: 'entry.set', entryId: entry.id, patch: { privateNote } });
    if (isKept) say(said.kept(name));
    isOver.current = isKept;
    return isKept;
  };
  const latest = useRef(keep);
  useEffect(() => {
    latest.current = keep;
  });
  useEffect(() => () => void latest.current(), []);
  const { leave, question } = useLeave(isMuchTyped([''], [text]), () => {
    isOver.current = true;
    onClose();
  });
  const keepAndClose = async () => {
    if (await keep()) onClose();
  };
  if (!name) return null;
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
            if (event.key !== 'Enter' && event.key !== 'Escape') return;
            event.preventDefault();
            if (event.key === 'Escape') leave();
            else void keepAndClose();
          }}
        />
      </div>
      <Button look="main" onPress={() => void keepAndClose()}>
        {said.keep}
      </Button>
      <Button onPress={leave}>{screens.shell.cancel}</Button>
      {question}
    </section>
  );
}
