import { useWords } from '../hooks/use-words.tsx';
import styles from './Keys.module.css';

/** The keys of an action as printed caps, `Mod+K`. */
export function Keys({ keys }: { keys: string }) {
  const said: Partial<Record<string, string>> = useWords().screens.shell.keyNames;
  const isMac = navigator.platform.startsWith('Mac');
  return (
    <kbd className={styles.keys}>
      {keys.split('+').map((key) => (
        <span key={key} className={styles.cap}>
          {key === 'Mod' && isMac ? '⌘' : (said[key] ?? key)}
        </span>
      ))}
    </kbd>
  );
}
