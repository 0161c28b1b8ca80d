import styles from './Keys.module.css';

/** The keys of an action as printed caps, `Mod+K`. */
export function Keys({ keys }: { keys: string }) {
  const isMac = navigator.platform.startsWith('Mac');
  return (
    <kbd className={styles.keys}>
      {keys.split('+').map((key) => (
        <span key={key} className={styles.cap}>
          {key === 'Mod' ? (isMac ? '⌘' : 'Ctrl') : key}
        </span>
      ))}
    </kbd>
  );
}
