import type { VerdictWire } from '../../core/contract/index.ts';
import { quantities } from '../../core/log/index.ts';
import table from '../components/Table.module.css';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './WitnessTable.module.css';

type Witness = VerdictWire['witnesses'][number];

/** What the other channels say: whether the declared change happened, and whether anything else moved. */
export function WitnessTable({ witnesses }: { witnesses: readonly Witness[] }) {
  const { screens, show, quantity, note } = useWords();
  const said = screens.bench;
  if (witnesses.length === 0) return <p className={styles.none}>{said.noWitnesses}</p>;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{said.witness}</th>
          <th scope="col" className={table.number}>
            {said.before}
          </th>
          <th scope="col" className={table.number}>
            {said.after}
          </th>
          <th scope="col" className={table.number}>
            {said.difference}
          </th>
          <th scope="col" />
        </tr>
      </thead>
      <tbody>
        {witnesses.map((w) => {
          const kind = quantities[w.quantity];
          const unit = show.unit(kind);
          const half = (w.interval95[1] - w.interval95[0]) / 2;
          const difference = show.differenceWithHalf(w.delta, half, kind);
          return (
            <tr key={w.quantity} className={cx(w.role === 'steady' && styles.quiet)}>
              <th scope="row">
                {quantity(w.quantity)} {unit && <span className={styles.unit}>{unit}</span>}
              </th>
              <td className={cx(table.number, styles.before)}>{show.bare(w.before, kind)}</td>
              <td className={cx(table.number, styles.after)}>{show.bare(w.after, kind)}</td>
              <td className={table.number}>{withoutUnit(difference, unit)}</td>
              <td className={cx(styles.word, styles[w.role])}>
                {w.remark ? note(w.remark) : said.roles[w.role]}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** The unit stands once, beside the name. */
function withoutUnit(text: string, unit: string): string {
  return unit !== '' && text.endsWith(unit) ? text.slice(0, -unit.length).trimEnd() : text;
}
