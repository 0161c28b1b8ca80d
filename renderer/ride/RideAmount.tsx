import { cx } from '../design/cx.ts';
import tones from '../design/tones.module.css';
import styles from './RideAmount.module.css';
import type { RideEffect } from './ride-effect.ts';

export type RideAmountProps = {
  readonly effect: RideEffect;
  /** The log that is being written, or what became of the last pull. */
  readonly last: string;
  /** What this view can't do here: see no log come, fill the screen, keep it lit, sound. */
  readonly trouble: string;
};

/** The verdict in a word, the effect as large as the seat allows, and what it may be off by. */
export function RideAmount({ effect, last, trouble }: RideAmountProps) {
  const { word, tone, amount, lines } = effect;
  return (
    <section className={styles.effect}>
      <p className={cx(styles.word, tone && tones[tone], !amount && styles.alone)}>{word}</p>
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
      {trouble !== '' && <p className={styles.last}>{trouble}</p>}
    </section>
  );
}
