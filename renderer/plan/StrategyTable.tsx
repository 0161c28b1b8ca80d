import { explainStrategy, midRangeCost, type Plan } from '../../core/injection/index.ts';
import table from '../components/Table.module.css';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import styles from './StrategyTable.module.css';

/** The ways to set the spray side by side, each number with its origin; the driven one stands out. */
export function StrategyTable({ plan }: { plan: Plan }) {
  const { screens, show } = useWords();
  const said = screens.plan;
  const share = (value: number) => show.quantity(value, 'share', 0);
  return (
    <table className={cx(table.table, styles.ways)}>
      <caption className="visually-hidden">{said.ways}</caption>
      <thead>
        <tr>
          <th scope="col">{said.way}</th>
          {[said.start, said.full, said.atStart, said.atPeak, said.midRange, said.misses].map((title) => (
            <th key={title} scope="col" className={cx(table.number, styles.head)}>
              {title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {plan.strategies.map((s) => {
          const why = explainStrategy(s, plan.context);
          const cost = midRangeCost(s);
          const name = said.strategies[s.name];
          const cells = [
            { what: said.start, value: show.quantity(s.start, 'boost'), explanation: why.points },
            { what: said.full, value: show.quantity(s.full, 'boost'), explanation: why.points },
            { what: said.atStart, value: share(s.atStart.fluidToFuel), explanation: why.atStart },
            { what: said.atPeak, value: share(s.peakFeed), explanation: why.peak },
            {
              what: said.midRange,
              value: cost === null ? said.nothing : share(cost.shortfall),
              explanation: why.midRange,
            },
            { what: said.misses, value: share(s.misfeed), explanation: why.misfeed },
          ];
          return (
            <tr key={s.name} className={cx(s.name === plan.driven.name && styles.driven)}>
              <th scope="row">{name}</th>
              {cells.map(({ what, value, explanation }) => (
                <td key={what} className={table.number}>
                  <WhereFrom value={value} what={`${name}, ${what}`} explanation={explanation} />
                </td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
