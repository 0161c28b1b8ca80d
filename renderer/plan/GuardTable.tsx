import type { GuardRow } from '../../core/injection/index.ts';
import table from '../components/Table.module.css';
import { useWords } from '../hooks/use-words.tsx';

/** Lowest and highest that is still normal, by boost. */
export function GuardTable({ rows }: { rows: readonly GuardRow[] }) {
  const { screens, show } = useWords();
  const said = screens.plan;
  const between = (low: string, high: string) => `${low}–${high}`;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{`${said.boost}, ${show.unit('boost')}`}</th>
          <th scope="col" className={table.number}>{`${said.flow}, ${show.unit('volumeFlow')}`}</th>
          <th scope="col" className={table.number}>
            {said.guardPressure(show.unit('fluidPressure'))}
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
