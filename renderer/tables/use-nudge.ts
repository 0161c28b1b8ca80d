import { useState } from 'react';
import { fail, type Result } from '../../core/result/index.ts';
import {
  type CellMask,
  type HeldCell,
  maskOf,
  type SteppedTable,
  stepCells,
} from '../../core/tables/index.ts';
import type { Cell } from './grid-keys.ts';
import type { TableNow } from './use-table.ts';

type Told = {
  readonly stepped: SteppedTable;
  readonly cursor: Cell;
  readonly chosen: CellMask;
  /** Counts the presses, but not a key that is held down: what was told is told again. */
  readonly press: number;
};

export type NudgeState = {
  /** The last step by keys, while the cells that it meant are still the chosen ones. */
  readonly told: Pick<Told, 'stepped' | 'press'> | null;
  /** Cells that it could not move as far as asked; null where there are none. */
  readonly held: CellMask | null;
  readonly nudge: (
    sign: 1 | -1,
    isRepeat: boolean,
    question: { readonly covered: CellMask; readonly step: number; readonly neighbours: number | null },
  ) => Result<SteppedTable>;
};

/** Steps the chosen cells by a key, with a hard edge, and remembers what held them. */
export function useNudge(of: TableNow, { cursor, chosen }: { cursor: Cell; chosen: CellMask }): NudgeState {
  const { table, now, before, limit } = of;
  const [last, setLast] = useState<Told | null>(null);
  const told = last && last.cursor === cursor && last.chosen === chosen ? last : null;
  const isHeld = (held: readonly HeldCell[]) => (row: number, column: number) =>
    held.some((h) => h.row === row && h.column === column);
  return {
    told,
    held: told && told.stepped.held.length > 0 ? maskOf(now, isHeld(told.stepped.held)) : null,
    nudge: (sign, isRepeat, { covered, step, neighbours }) => {
      if (sign > 0 && limit === null) return fail({ code: 'tables/no-limit', facts: { kind: table.kind } });
      const stepped = stepCells(now, {
        covered,
        step: sign * Math.abs(step),
        edge: 0,
        limit: sign > 0 ? limit : null,
        neighbourLimit: neighbours,
        since: before,
      });
      if (stepped.ok)
        setLast((old) => ({
          stepped: stepped.value,
          cursor,
          chosen,
          press: (old?.press ?? 0) + (isRepeat ? 0 : 1),
        }));
      return stepped;
    },
  };
}
