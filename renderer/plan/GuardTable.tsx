import type { GuardRow } from '../../core/injection/index.ts';
import type { Explanation } from '../../core/units/index.ts';
import table from '../components/Table.module.css';
import { useWords } from '../hooks/use-words.tsx';
import { AskedHead } from '../where-from/AskedHead.tsx';

export type GuardTableProps = {
  readonly rows: readonly GuardRow[];
  readonly flow: Explanation | undefined;
  readonly pressure: Explanation | undefined;
};

/** Lowest and highest that is still normal, by boost. */
export function GuardTable({ rows, flow, pressure }: GuardTableProps) {
  const { screens, show } = useWords();
  const said = screens.plan;
  const between = (low: string, high: string) => `${low}–${high}`;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{`${said.boost}, ${show.unit('boost')}`}</th>
          <th scope="col" className={table.number}>
            <AskedHead title={`${said.flow}, ${show.unit('volumeFlow')}`} explanation={flow} />
          </th>
          <th scope="col" className={table.number}>
            <AskedHead title={said.guardPressure(show.unit('fluidPressure'))} explanation={pressure} />
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.boost}>
            <th scope="row">{show.bare(row.boost, 'boost')}</th>
            <td className={table.number}>
              {between(show.bare(row.lowestFlow, 'volumeFlow'), show.bare(row.highestFlow, 'volumeFlow'))}
            </td>
            <td className={table.number}>
              {between(
                show.bare(row.lowestPressure, 'fluidPressure'),
                show.bare(row.highestPressure, 'fluidPressure'),
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
