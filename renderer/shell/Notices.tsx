import { X } from 'lucide-react';
import { useState } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import type { Note } from '../../core/result/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './Notices.module.css';

/** What opening the folder found and set aside, and why it can't be written, where that is so. */
export function Notices({ snapshot }: { snapshot: Snapshot }) {
  const { screens, note, problem } = useWords();
  const show = useShow();
  const [hidden, setHidden] = useState('');
  const { notices, readOnly, folder } = snapshot;
  if (readOnly) {
    const said = problem(readOnly);
    return (
      <div className={styles.notices} role="status">
        <p>
          <strong>{screens.shell.readOnly}.</strong> {said.message} {said.remedy}
        </p>
      </div>
    );
  }
  if (notices.length === 0 || hidden === folder) return null;
  return (
    <div className={styles.notices} role="status">
      <div>
        <strong>{screens.shell.notices}</strong>
        {notices.map((n) => {
          const aside = asideOf(n);
          return (
            <p key={note(n)}>
              {note(n)}{' '}
              {aside !== null && (
                <Button look="plain" onPress={() => show({ dialog: { type: 'set-aside', file: aside } })}>
                  {screens.move.aside}
                </Button>
              )}
            </p>
          );
        })}
      </div>
      <Button look="icon" aria-label={screens.shell.dismiss} onPress={() => setHidden(folder)}>
        <X aria-hidden />
      </Button>
    </div>
  );
}

/** A session.json that was set aside may be an edit by hand that somebody wants back. */
function asideOf(note: Note): string | null {
  return note.code === 'store/restored' && note.facts.file === 'session.json' ? note.facts.to : null;
}
