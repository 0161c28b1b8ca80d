import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { type Aligned, readAt } from './aligned.ts';
import styles from './ChannelReadout.module.css';
import type { ChannelChoice } from './channel-choice.ts';

export type ChannelReadoutProps = {
  readonly choices: readonly ChannelChoice[];
  readonly lines: readonly Aligned[];
  /** SI of the axis; null while nobody points. */
  readonly x: number | null;
  readonly along: 'engineSpeed' | 'time';
  readonly reach: number;
  readonly nameOf: (choice: ChannelChoice) => string;
};

/** What every shown channel reads at the line, before and after, each the mean over its pulls. */
export function ChannelReadout({ choices, lines, x, along, reach, nameOf }: ChannelReadoutProps) {
  const { screens, show } = useWords();
  const said = screens.channels;
  if (x === null) return <p className={styles.readout}>{said.readHint}</p>;
  const text = (choice: ChannelChoice, value: number | null) => {
    if (value === null) return said.gap;
    return choice.quantity === null ? show.number(value, 2) : show.channel(value, choice.quantity);
  };
  const sides = (['before', 'after', 'pinned'] as const).filter((side) => lines.some((l) => l.side === side));
  return (
    <dl className={styles.readout} aria-label={`${said.at} ${show.quantity(x, along)}`}>
      <div className={styles.place}>
        <dt>{said.at}</dt>
        <dd>{show.quantity(x, along)}</dd>
      </div>
      {choices.map((choice) => (
        <div key={choice.key} className={styles.channel}>
          <dt>{nameOf(choice)}</dt>
          {sides.map((side) => (
            <dd key={side} className={cx(styles[side])}>
              <span className="visually-hidden">{said[side]} </span>
              {text(
                choice,
                readAt(
                  lines.filter((l) => l.key === choice.key && l.side === side),
                  x,
                  reach,
                ),
              )}
            </dd>
          ))}
        </div>
      ))}
    </dl>
  );
}
