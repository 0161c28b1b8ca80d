import { useEffect, useState } from 'react';
import { afterTyped } from '../components/leave-guard.ts';
import { useWords } from '../hooks/use-words.tsx';
import { useTakeFiles } from './use-take-files.ts';
import styles from './WindowDrop.module.css';

const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;

/** Takes files dropped anywhere in the window, and says so while they hover. */
export function WindowDrop() {
  const { screens } = useWords();
  const takeFiles = useTakeFiles();
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const onOver = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(false);
      const files = Array.from(event.dataTransfer?.files ?? []);
      afterTyped(() => takeFiles(files));
    };
    window.addEventListener('dragover', onOver);
    window.addEventListener('dragleave', onLeave);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('dragleave', onLeave);
      window.removeEventListener('drop', onDrop);
    };
  }, [takeFiles]);
  if (!isOver) return null;
  return (
    <div className={styles.over}>
      <p>{screens.shell.dropHere}</p>
    </div>
  );
}
