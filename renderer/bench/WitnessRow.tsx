import type { VerdictWire } from '../../core/contract/index.ts';
import { quantities } from '../../core/log/index.ts';
import table from '../components/Table.module.css';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './WitnessTable.module.css';

/** One channel before and after, and what that means in words. */
export function WitnessRow({ witness: w }: { witness: VerdictWire['witnesses'][number] }) {
  const { screens, show, quantity, note } = useWords();
  const kind = quantities[w.quantity];
  const unit = show.unit(kind);
  const half = (w.interval95[1] - w.interval95[0]) / 2;
  // What moved without being asked to stands with the verdict's reasons already.
  const remark = w.role === 'moved' ? null : w.remark;
  const difference = show.differenceWithHalf(w.delta, half, kind);
  return (
    <tr className={cx(w.role === 'steady' && styles.quiet)}>
      <th scope="row" className={styles.name}>
        {quantity(w.quantity)} {unit !== 'λ' && <span className={styles.unit}>{unit}</span>}
      </th>
      <td className={cx(table.number, styles.before)}>{show.bare(w.before, kind)}</td>
      <td className={cx(table.number, styles.after)}>{show.bare(w.after, kind)}</td>
      <td className={table.number}>{withoutUnit(difference)}</td>
      <td className={cx(styles.word, styles[w.role])}>
        <span className={styles.short}>{screens.bench.roles[w.role]}</span>
        {remark && <span className={styles.remark}>{note(remark)}</span>}
      </td>
    </tr>
  );
}

/** The unit stands once, beside the name. */
function withoutUnit(text: string): string {
  return text.replace(/(?:\u00a0.*|°)$/, '');
}
