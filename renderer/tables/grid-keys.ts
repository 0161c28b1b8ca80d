import type { CellMask } from '../../core/tables/index.ts';

export type Cell = { readonly row: number; readonly column: number };

/** Cursor, and the corner from which Shift spans a block. */
export type GridPlace = { readonly cursor: Cell; readonly anchor: Cell };

/** What a key asks of the grid; null where it is not the grid's. */
export type GridAction =
  | { readonly type: 'move'; readonly to: Cell; readonly isBlock: boolean }
  | { readonly type: 'toggle' }
  | { readonly type: 'all' }
  | { readonly type: 'none' }
  | { readonly type: 'nudge'; readonly sign: 1 | -1; readonly isRepeat: boolean }
  | { readonly type: 'type'; readonly text: string };

type KeyFacts = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey' | 'repeat'>;

/** Rows that a page moves over. */
const page = 8;

/** The keys of a grid (WAI-ARIA Authoring Practices, grid pattern), and those of a table of numbers. */
export function gridAction(event: KeyFacts, at: Cell, rows: number, columns: number): GridAction | null {
  const { key, shiftKey: isBlock } = event;
  const isMod = event.ctrlKey || event.metaKey;
  if (event.altKey) return null;
  const move = (row: number, column: number): GridAction => ({
    type: 'move',
    isBlock,
    to: {
      row: Math.max(0, Math.min(rows - 1, row)),
      column: Math.max(0, Math.min(columns - 1, column)),
    },
  });
  const { row, column } = at;
  switch (key) {
    case 'ArrowUp':
      return move(isMod ? 0 : row - 1, column);
    case 'ArrowDown':
      return move(isMod ? rows : row + 1, column);
    case 'ArrowLeft':
      return move(row, isMod ? 0 : column - 1);
    case 'ArrowRight':
      return move(row, isMod ? columns : column + 1);
    case 'PageUp':
      return move(row - page, column);
    case 'PageDown':
      return move(row + page, column);
    case 'Home':
      return move(isMod ? 0 : row, 0);
    case 'End':
      return move(isMod ? rows : row, columns);
    case ' ':
      return { type: 'toggle' };
    case 'Escape':
      return { type: 'none' };
    case 'Enter':
    case 'F2':
      return { type: 'type', text: '' };
    default:
  }
  if (isMod) return key.toLowerCase() === 'a' ? { type: 'all' } : null;
  if (key === '+') return { type: 'nudge', sign: 1, isRepeat: event.repeat };
  if (key === '-' || key === '−') return { type: 'nudge', sign: -1, isRepeat: event.repeat };
  return /^[\d.,]$/.test(key) ? { type: 'type', text: key } : null;
}

/** The block between two corners, both in. */
export function isInBlock({ cursor, anchor }: GridPlace, row: number, column: number): boolean {
  const within = (value: number, a: number, b: number) => value >= Math.min(a, b) && value <= Math.max(a, b);
  return within(row, cursor.row, anchor.row) && within(column, cursor.column, anchor.column);
}

export function toggled(mask: CellMask, at: Cell): CellMask {
  return mask.map((line, r) => (r === at.row ? line.map((is, c) => (c === at.column ? !is : is)) : line));
}
