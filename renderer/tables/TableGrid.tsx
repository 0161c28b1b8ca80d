import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef } from 'react';
import type { CellMask, EcuTable, TableAxes } from '../../core/tables/index.ts';
import { useSize } from '../chart/use-size.ts';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { headText, loadSymbol } from './cell-text.ts';
import { GridRow, noFlags } from './GridRow.tsx';
import { type Cell, type GridAction, gridAction } from './grid-keys.ts';
import { type HeatInk, heatColour } from './heat-share.ts';
import styles from './TableGrid.module.css';
import { TraceOverlay, type TracePath } from './TraceOverlay.tsx';

export type TableGridProps = {
  readonly name: string;
  readonly table: EcuTable;
  readonly axes: TableAxes;
  readonly texts: readonly (readonly string[])[];
  readonly heat: (row: number, column: number) => HeatInk;
  readonly cursor: Cell;
  readonly chosen: CellMask;
  readonly held: CellMask | null;
  readonly paths: readonly TracePath[];
  /** Every cell in sight, without its number. */
  readonly isWhole: boolean;
  readonly onAction: (action: GridAction) => void;
  readonly onPoint: (cell: Cell, how: 'one' | 'block' | 'toggle') => void;
};

const headWidth = 72;
const headHeight = 24;

/** The cell that an event fell into. */
function cellOf(target: EventTarget): Cell | null {
  const place = target instanceof Element ? target.closest('[data-cell]')?.getAttribute('data-cell') : null;
  const [row, column] = (place ?? '').split(',').map(Number);
  return row !== undefined && column !== undefined ? { row, column } : null;
}

/** The table as a heat map with real rows, columns and cells: arrows move, everything has a key. */
export function TableGrid(props: TableGridProps) {
  const { name, table, axes, texts, heat, cursor, chosen, held, paths, isWhole, onAction, onPoint } = props;
  const { screens, show } = useWords();
  const outer = useRef<HTMLDivElement>(null);
  const grid = useRef<HTMLTableElement>(null);
  const size = useSize(outer);
  const [rows, columns] = [table.down.length, table.across.length];
  const longest = texts.reduce((most, line) => line.reduce((m, t) => Math.max(m, t.length), most), 4);
  const room = Math.floor(((size?.width ?? 720) - headWidth - 2) / columns);
  const width = isWhole ? Math.max(8, room) : Math.max(Math.min(room, 72), Math.ceil(longest * 8.2) + 8);
  const height = isWhole ? Math.max(12, Math.min(24, Math.floor(400 / rows))) : 24;
  const colours = useMemo(
    () => table.down.map((_, r) => table.across.map((__, c) => heatColour(heat(r, c)))),
    [table, heat],
  );

  // Focus follows the cursor only while it is in the grid: a change elsewhere must not steal it.
  useEffect(() => {
    const element = grid.current;
    if (!element?.contains(document.activeElement)) return;
    const cell = element.querySelector<HTMLElement>(`[data-cell="${cursor.row},${cursor.column}"]`);
    cell?.focus({ preventScroll: true });
    cell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [cursor]);

  const onKeyDown = (event: KeyboardEvent) => {
    const action = gridAction(event, cursor, rows, columns);
    if (!action) return;
    event.preventDefault();
    onAction(action);
  };
  const onPointerDown = (event: PointerEvent) => {
    const cell = cellOf(event.target);
    if (!cell || event.button !== 0) return;
    onPoint(cell, event.shiftKey ? 'block' : event.ctrlKey || event.metaKey ? 'toggle' : 'one');
  };
  const onPointerOver = (event: PointerEvent) => {
    const cell = event.buttons === 1 ? cellOf(event.target) : null;
    if (cell) onPoint(cell, 'block');
  };
  // In a whole table of many columns every second or fourth head is enough to read by.
  const every = isWhole ? Math.max(1, Math.ceil(44 / width)) : 1;
  const everyRow = isWhole ? Math.max(1, Math.ceil(18 / height)) : 1;
  const speed = show.symbol('rpm', 'engineSpeed');
  const load = loadSymbol(axes.load, show);
  const [top, side] = axes.engineSpeed === 'across' ? [speed, load] : [load, speed];
  return (
    <div ref={outer}>
      <div className={styles.frame}>
        <table
          ref={grid}
          // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are edited is a grid
          role="grid"
          className={styles.grid}
          style={{ width: headWidth + width * columns }}
          aria-label={screens.tables.gridLabel(name)}
          aria-description={screens.tables.gridHelp}
          aria-multiselectable
          aria-rowcount={rows + 1}
          aria-colcount={columns + 1}
          onKeyDown={onKeyDown}
          onPointerDown={onPointerDown}
          onPointerOver={onPointerOver}
        >
          <colgroup>
            <col style={{ width: headWidth }} />
            <col span={columns} style={{ width }} />
          </colgroup>
          <thead>
            <tr style={{ height: headHeight }}>
              <td className={styles.corner}>
                {side}
                <span className="visually-hidden">{` \\ ${top}`}</span>
              </td>
              {table.across.map((value, c) => (
                <th key={value} scope="col" className={cx(c === cursor.column && styles.here)}>
                  {c % every === 0 ? headText(value, show) : <span className="visually-hidden">{value}</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.down.map((value, r) => (
              <GridRow
                key={value}
                row={r}
                head={r % everyRow === 0 ? headText(value, show) : ''}
                texts={texts[r] ?? []}
                colours={colours[r] ?? []}
                chosen={chosen[r] ?? noFlags}
                above={chosen[r - 1] ?? noFlags}
                below={chosen[r + 1] ?? noFlags}
                held={held?.[r] ?? noFlags}
                cursor={cursor.row === r ? cursor.column : null}
                height={height}
                isWhole={isWhole}
              />
            ))}
          </tbody>
        </table>
        <TraceOverlay
          paths={paths}
          left={headWidth}
          top={headHeight}
          cellWidth={width}
          cellHeight={height}
          rows={rows}
          columns={columns}
        />
      </div>
    </div>
  );
}
