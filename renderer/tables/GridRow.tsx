import { memo } from 'react';
import { cx } from '../design/cx.ts';
import styles from './TableGrid.module.css';

export type GridRowProps = {
  readonly row: number;
  readonly head: string;
  readonly texts: readonly string[];
  readonly colours: readonly string[];
  /** This row of the mask, and its neighbours for the outline. */
  readonly chosen: readonly boolean[];
  readonly above: readonly boolean[];
  readonly below: readonly boolean[];
  readonly held: readonly boolean[];
  /** Null where the cursor is in another row. */
  readonly cursor: number | null;
  readonly height: number;
  readonly isWhole: boolean;
};

const none: readonly boolean[] = [];

/** A line around what is chosen, along its rim alone. */
function rim(c: number, { chosen, above, below }: Pick<GridRowProps, 'chosen' | 'above' | 'below'>): string {
  if (!chosen[c]) return 'none';
  const sides = [
    above[c] ? '' : 'inset 0 2px 0 var(--ink)',
    below[c] ? '' : 'inset 0 -2px 0 var(--ink)',
    chosen[c - 1] ? '' : 'inset 2px 0 0 var(--ink)',
    chosen[c + 1] ? '' : 'inset -2px 0 0 var(--ink)',
  ];
  return sides.filter((s) => s !== '').join(', ') || 'none';
}

export const GridRow = memo(function GridRow(props: GridRowProps) {
  const { row, head, texts, colours, chosen, held, cursor, height, isWhole } = props;
  return (
    <tr aria-rowindex={row + 2} style={{ height }}>
      <th scope="row" className={cx(cursor !== null && styles.here)}>
        {head}
      </th>
      {texts.map((text, c) => (
        <td
          // biome-ignore lint/suspicious/noArrayIndexKey: a column of a table is its place
          key={c}
          // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a cell of a grid, which is edited
          role="gridcell"
          aria-selected={chosen[c] ?? false}
          aria-colindex={c + 2}
          data-cell={`${row},${c}`}
          tabIndex={cursor === c ? 0 : -1}
          className={cx(
            chosen[c] && styles.chosen,
            cursor === c && styles.cursor,
            (held[c] ?? false) && styles.held,
          )}
          style={{ backgroundColor: colours[c], boxShadow: rim(c, props) }}
        >
          {isWhole ? <span className="visually-hidden">{text}</span> : text}
        </td>
      ))}
    </tr>
  );
});

export const noFlags = none;
