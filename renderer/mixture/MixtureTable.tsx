import { nearFrom } from '../../core/ladder/index.ts';
import type { Explanation } from '../../core/units/index.ts';
import table from '../components/Table.module.css';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { AskedHead } from '../where-from/AskedHead.tsx';
import styles from './MixtureTable.module.css';
import type { MixtureNow } from './use-mixture.ts';

/** Row by row over boost; the column of the fuelling is the one that this control asks for. */
export function MixtureTable({ now, dutyLimit }: { now: MixtureNow; dutyLimit: number }) {
  const { screens, show } = useWords();
  const said = screens.mixture;
  const { rows, scale, explanations } = now.mixture.plan;
  const isLoop = (now.setup.engine.fuelling ?? 'closed-loop') === 'closed-loop';
  const lambda = (value: number) => show.bare(value, 'lambda', 2);
  const of = (id: string) => explanations.find((e) => e.id === id);
  const heads: readonly (readonly [string, Explanation | null | undefined])[] = [
    [said.alcohol, of('mixture/blend')],
    [isLoop ? said.trim : said.table, of('mixture/fuelling')],
    ...(isLoop ? [] : [[said.ifLeft, of('mixture/fuelling')] as const]),
    // The present target is what was typed.
    [said.now, null],
    [said.target, of('mixture/target-shift')],
    [said.gauge(show.number(scale, 1)), of('mixture/gauge')],
    [said.real, of('mixture/blend')],
    [said.best(show.unit('lambda')), of('mixture/best-power')],
    [said.duty(show.quantity(dutyLimit, 'share', 0)), now.dutyExplained],
  ];
  return (
    <table className={cx(table.table, styles.table)}>
      <thead>
        <tr>
          <th scope="col">{`${said.boost}, ${show.unit('boost')}`}</th>
          {heads.map(([title, explanation]) => (
            <th key={title} scope="col" className={styles.head}>
              <AskedHead title={title} explanation={explanation} />
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, i) => {
          const duty = now.duty[i] ?? null;
          const { fuelling, demand } = row;
          return (
            <tr key={row.boost}>
              <th scope="row">{show.bare(row.boost, 'boost')}</th>
              <td className={table.number}>{show.quantity(demand.alcoholShare, 'share')}</td>
              <td className={table.number}>
                {show.difference(isLoop ? fuelling.expectedTrim : fuelling.tableChange, 'share')}
              </td>
              {!isLoop && <td className={table.number}>{lambda(fuelling.lambdaIfLeft)}</td>}
              <td className={table.number}>{lambda(row.target - row.shift)}</td>
              <td className={cx(table.number, row.shift > 0.005 && styles.shifted)}>{lambda(row.target)}</td>
              <td className={table.number}>{show.number(row.gauge, 1)}</td>
              <td className={table.number}>{show.number(row.airFuel, 1)}</td>
              <td className={cx(table.number, styles.range)}>
                {lambda(row.bestPower[0])}–{lambda(row.bestPower[1])}
              </td>
              <td
                className={cx(
                  table.number,
                  duty !== null &&
                    (duty >= dutyLimit ? styles.past : duty >= nearFrom * dutyLimit && styles.near),
                )}
              >
                {duty === null ? screens.shell.unknown : show.quantity(duty, 'share', 0)}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
