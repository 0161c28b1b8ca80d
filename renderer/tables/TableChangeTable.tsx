import type { TableChange } from '../../core/session/index.ts';
import cells from '../components/Table.module.css';
import { useWords } from '../hooks/use-words.tsx';
import { placeText, symbolOf, withUnit } from './cell-text.ts';
import styles from './Tables.module.css';

/** Every cell that changed, with what it was and is. */
export function TableChangeTable({ change }: { change: TableChange }) {
  const { screens, show } = useWords();
  const said = screens.tables;
  const digits = change.cells.reduce(
    (most, c) => Math.max(most, ...[c.from, c.to].map((v) => `${v}`.split('.')[1]?.length ?? 0)),
    0,
  );
  const text = (value: number) => withUnit(show.number(value, Math.min(4, digits)), symbolOf(change, show));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolled region must be reachable by keys
    <section className={styles.scroll} aria-label={said.tab} tabIndex={0}>
      <table className={cells.table}>
        <thead>
          <tr>
            <th scope="col">{said.speedColumn}</th>
            <th scope="col">{said.loadColumn}</th>
            {[said.from, said.to, said.by].map((head) => (
              <th key={head} scope="col" className={cells.number}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {change.cells.map(({ row, column, from, to }) => {
            const at = placeText(change.axes, change.across[column] ?? 0, change.down[row] ?? 0, show);
            return (
              <tr key={`${row} ${column}`}>
                <th scope="row">{at.speed}</th>
                <td>{at.load}</td>
                <td className={cells.number}>{text(from)}</td>
                <td className={cells.number}>{text(to)}</td>
                <td className={cells.number}>
                  {withUnit(show.signed(to - from, Math.min(4, digits)), symbolOf(change, show))}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
