import type { ReactNode } from 'react';
import type { VerdictPart } from '../../core/words/index.ts';
import { cx } from '../design/cx.ts';
import tones from '../design/tones.module.css';
import { toneOf } from '../ledger/tone.ts';
import styles from './Headline.module.css';

export type HeadlineProps = {
  readonly parts: readonly VerdictPart[];
  readonly second: string;
  readonly isStale?: boolean;
  /** What can be done about it, beside the second line. */
  readonly action?: ReactNode;
};

/** The verdict as a sentence, one piece of it coloured; what it rests on below. */
export function Headline({ parts, second, isStale = false, action }: HeadlineProps) {
  return (
    <header className={cx(styles.headline, isStale && styles.stale)} aria-live="polite" aria-busy={isStale}>
      <h1 className={styles.sentence}>
        {parts.map((part) => (
          <span key={part.text} className={cx(part.tone && tones[toneOf(part.tone)])}>
            {part.text}
          </span>
        ))}
      </h1>
      {(second !== '' || action) && (
        <div className={styles.under}>
          {second !== '' && <p className={styles.second}>{second}</p>}
          {action && <div className={styles.action}>{action}</div>}
        </div>
      )}
    </header>
  );
}
