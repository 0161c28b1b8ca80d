import styles from './Sum.module.css';

/** A checksum to be compared by eye, in groups of eight. */
export function Sum({ label, sum }: { label: string; sum: string }) {
  return (
    <div className={styles.sum}>
      <span className={styles.label}>{label}</span>
      <code className={styles.digits}>{sum.match(/.{1,8}/g)?.join(' ')}</code>
    </div>
  );
}
