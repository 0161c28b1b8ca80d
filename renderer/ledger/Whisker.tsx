import type { LedgerLine } from '../../core/contract/index.ts';
import { cx } from '../design/cx.ts';
import type { ForestScale } from './forest-scale.ts';
import { toneOf } from './tone.ts';
import styles from './Whisker.module.css';

/** An effect with its interval on the session's common scale. Drawn only; the words beside it say the same. */
export function Whisker({ verdict, scale }: { verdict: LedgerLine['verdict']; scale: ForestScale }) {
  const zero = scale.at(0) * 100;
  const isOff = verdict?.kind === 'not-comparable';
  const effect = verdict && !isOff ? verdict.effect : null;
  const [low, high] = (effect !== null && verdict?.interval95) || [effect ?? 0, effect ?? 0];
  const clip = (share: number) => Math.min(1, Math.max(0, share)) * 100;
  const [from, to] = [clip(scale.at(low)), clip(scale.at(high))];
  return (
    <div className={cx(styles.strip, verdict && styles[toneOf(verdict.kind)])} aria-hidden>
      {scale.ticks.map((tick) => (
        <span key={tick.text} className={styles.tick} style={{ left: `${tick.share * 100}%` }} />
      ))}
      <span className={styles.zero} style={{ left: `${zero}%` }} />
      {effect !== null && (
        <>
          <span
            className={cx(
              styles.line,
              scale.at(low) < 0 && styles.cutLow,
              scale.at(high) > 1 && styles.cutHigh,
            )}
            style={{ left: `${from}%`, width: `${to - from}%` }}
          />
          <span className={styles.dot} style={{ left: `${clip(scale.at(effect))}%` }} />
        </>
      )}
      {isOff && <span className={styles.off}>≠</span>}
    </div>
  );
}
