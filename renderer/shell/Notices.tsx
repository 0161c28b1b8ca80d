import { X } from 'lucide-react';
import { useState } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import { Button } from '../components/Button.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './Notices.module.css';

/** What opening the folder found and set aside, and why it can't be written, where that is so. */
export function Notices({ snapshot }: { snapshot: Snapshot }) {
  const { screens, note, problem } = useWords();
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
        {notices.map((n) => (
          <p key={note(n)}>{note(n)}</p>
        ))}
      </div>
      <Button look="icon" aria-label={screens.shell.dismiss} onPress={() => setHidden(folder)}>
        <X aria-hidden />
      </Button>
    </div>
  );
}
