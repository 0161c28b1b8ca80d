import { useState } from 'react';
import { type CellMask, type EcuTable, maskOf } from '../../core/tables/index.ts';
import { type Cell, type GridAction, isInBlock, toggled } from './grid-keys.ts';

export type GridState = {
  readonly cursor: Cell;
  readonly chosen: CellMask;
  readonly choose: (mask: CellMask) => void;
  /** True where the action was the grid's own: moving and choosing. */
  readonly act: (action: GridAction) => boolean;
  readonly point: (cell: Cell, how: 'one' | 'block' | 'toggle') => void;
};

/** Where the cursor is and which cells are chosen. Moving alone leaves the choice: a covered area is looked through. */
export function useGrid(table: EcuTable): GridState {
  const [cursor, setCursor] = useState<Cell>({ row: 0, column: 0 });
  const [anchor, setAnchor] = useState<Cell>(cursor);
  const [chosen, setChosen] = useState<CellMask>(() => maskOf(table, () => false));
  const block = (to: Cell) => {
    setCursor(to);
    setChosen(maskOf(table, (r, c) => isInBlock({ cursor: to, anchor }, r, c)));
  };
  const step = (to: Cell) => {
    setCursor(to);
    setAnchor(to);
  };
  return {
    cursor,
    chosen,
    choose: setChosen,
    act: (action) => {
      switch (action.type) {
        case 'move':
          if (action.isBlock) block(action.to);
          else step(action.to);
          return true;
        case 'toggle':
          setChosen(toggled(chosen, cursor));
          return true;
        case 'all':
          setChosen(maskOf(table, () => true));
          return true;
        case 'none':
          setChosen(maskOf(table, () => false));
          return true;
        default:
          return false;
      }
    },
    point: (cell, how) => {
      if (how === 'block') return block(cell);
      step(cell);
      setChosen(
        how === 'toggle'
          ? toggled(chosen, cell)
          : maskOf(table, (r, c) => r === cell.row && c === cell.column),
      );
    },
  };
}
