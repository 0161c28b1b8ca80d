import { cx } from '../design/cx.ts';
import styles from './RideAmount.module.css';
import type { RideEffect } from './ride-effect.ts';

/** The verdict in a word, the effect as large as the seat allows, and what it may be off by. */
export function RideAmount({ effect, last }: { effect: RideEffect; last: string }) {
  const { word, tone, amount, lines } = effect;
  return (
    <section className={styles.effect}>
      <p className={cx(styles.word, tone && styles[tone], !amount && styles.alone)}>{word}</p>
      {amount && (
        <p className={styles.amount}>
          {amount.number}
          <span className={styles.unit}>{amount.unit}</span>
        </p>
      )}
      {lines.map((line) => (
        <p key={line} className={styles.line}>
          {line}
        </p>
      ))}
      <p className={styles.last} role="status">
        {last}
      </p>
    </section>
  );
}
