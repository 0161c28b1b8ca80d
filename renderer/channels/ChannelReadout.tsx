import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { type Aligned, readAt } from './aligned.ts';
import styles from './ChannelReadout.module.css';
import type { ChannelChoice } from './channel-choice.ts';
import type { Side } from './use-traces.ts';

export type ChannelReadoutProps = {
  readonly choices: readonly ChannelChoice[];
  readonly lines: readonly Aligned[];
  /** SI of the axis; null while nobody points. */
  readonly x: number | null;
  readonly along: 'engineSpeed' | 'time';
  readonly reach: number;
  readonly nameOf: (choice: ChannelChoice) => string;
};

/**
 * What every shown channel reads at the line, before and after, each the mean over its pulls. It keeps its size, so
 * that the plot does not move under the pointer, and stays in sight over the panels.
 */
export function ChannelReadout({ choices, lines, x, along, reach, nameOf }: ChannelReadoutProps) {
  const { screens, show } = useWords();
  const said = screens.channels;
  const place = x === null ? null : show.quantity(x, along);
  const text = (choice: ChannelChoice, side: Side) => {
    const pulls = lines.filter((l) => l.key === choice.key && l.side === side);
    const value = x === null ? null : readAt(pulls, x, reach);
    if (value === null) return null;
    const { kind } = choice;
    return kind === null || kind === 'number' ? show.reading(value) : show.bare(value, kind);
  };
  const sides = (['before', 'after', 'pinned'] as const).filter((side) => lines.some((l) => l.side === side));
  return (
    <dl className={styles.readout} aria-label={place === null ? said.at : `${said.at} ${place}`}>
      <div className={styles.place}>
        <dt>{said.at}</dt>
        <dd>{place ?? <Gap said={said.gap} />}</dd>
      </div>
      {choices.map((choice) => (
        <div key={choice.key} className={styles.channel}>
          <dt title={nameOf(choice)}>
            <span className={styles.name}>{nameOf(choice)}</span>
            {choice.kind !== null && <span> {show.unit(choice.kind)}</span>}
          </dt>
          {sides.map((side) => (
            <dd key={side} className={cx(styles[side])}>
              <span className="visually-hidden">{said[side]} </span>
              {text(choice, side) ?? <Gap said={said.gap} />}
            </dd>
          ))}
        </div>
      ))}
    </dl>
  );
}

/** Short for the eye, whole for the ear: a word would take the room of two numbers. */
function Gap({ said }: { said: string }) {
  return (
    <>
      <span aria-hidden>–</span>
      <span className="visually-hidden">{said}</span>
    </>
  );
}
