import type { FeedMap } from '../../core/injection/index.ts';
import type { Explanation } from '../../core/units/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import styles from './FeedMapTable.module.css';

const kinds = ['under', 'right', 'over'] as const;

/** Every second column and row: what fits beside the words, and what a tuner thinks in. */
function everySecond(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i).filter((i) => i % 2 === 0);
}

/** Delivered over needed across the engine's states; the colour says the same as the number. */
export function FeedMapTable({ map, explanation }: { map: FeedMap; explanation: Explanation | undefined }) {
  const { screens, show } = useWords();
  const said = screens.plan;
  const speeds = everySecond(map.engineSpeed_rad_s.length);
  const boosts = everySecond(map.boost.length)
    .filter((b) => b >= 4)
    .reverse();
  return (
    <section>
      <table className={styles.map}>
        <caption>
          {said.map} <WhereFrom value={screens.whereFrom.ask} what={said.map} explanation={explanation} />
        </caption>
        <thead>
          <tr>
            <th scope="col">{show.unit('boost')}</th>
            {speeds.map((s) => (
              <th key={s} scope="col">
                {show.bare(map.engineSpeed_rad_s[s] ?? 0, 'engineSpeed')}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {boosts.map((b) => (
            <tr key={b}>
              <th scope="row">{show.bare(map.boost[b] ?? 0, 'boost')}</th>
              {speeds.map((s) => {
                const kind = map.kind[s]?.[b] ?? 'none';
                const feed = map.feed[s]?.[b] ?? null;
                return (
                  <td key={s} className={styles[kind]} title={said.kinds[kind]}>
                    {feed === null || kind === 'none' ? '–' : show.number(feed * 100)}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      <ul className={styles.legend}>
        {kinds.map((kind) => (
          <li key={kind}>
            <span className={styles[kind]} />
            {said.kinds[kind]}
          </li>
        ))}
      </ul>
    </section>
  );
}
