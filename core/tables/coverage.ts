import { fromSi, toSi } from '../units/index.ts';
import type { EcuTable } from './ecu-table.ts';

/** What an axis of load counts in: absolute or gauge manifold pressure. */
export type LoadUnit = { readonly kind: 'absolute' | 'gauge'; readonly unit: string };

/** Which axis is engine speed [rpm]; the other is load. */
export type TableAxes = { readonly engineSpeed: 'across' | 'down'; readonly load: LoadUnit };

/** Engine speeds are the axis with the larger numbers, past 1500 of which no load goes (common practice). */
export function guessAxes(table: EcuTable): TableAxes {
  const most = (axis: readonly number[]) => Math.max(...axis.map(Math.abs));
  const engineSpeed = most(table.across) >= most(table.down) ? 'across' : 'down';
  const load = engineSpeed === 'across' ? table.down : table.across;
  // Bar below 5, else kPa; below ambient down to idle only absolute pressure goes.
  const unit = most(load) <= 5 ? 'bar' : most(load) <= 60 ? 'psi' : 'kPa';
  const lowest = fromSi(toSi(Math.min(...load), unit), 'kPa');
  return { engineSpeed, load: { kind: lowest > 10 && unit === 'kPa' ? 'absolute' : 'gauge', unit } };
}

export type OperatingState = { readonly engineSpeed_rad_s: number; readonly boost: number };

/** What a cell stands for. */
export function stateOfCell(
  table: EcuTable,
  axes: TableAxes,
  row: number,
  column: number,
  ambientPressure: number,
): OperatingState {
  const across = table.across[column] ?? Number.NaN;
  const down = table.down[row] ?? Number.NaN;
  const speed = axes.engineSpeed === 'across' ? across : down;
  const pressure = toSi(axes.engineSpeed === 'across' ? down : across, axes.load.unit);
  return {
    engineSpeed_rad_s: toSi(speed, 'rpm'),
    boost: axes.load.kind === 'absolute' ? pressure - ambientPressure : pressure,
  };
}

/** Place of a value on an axis, in cells and parts of them; beyond the ends it stays at the last cell. */
function placeOn(axis: readonly number[], value: number): number {
  const rises = (axis[axis.length - 1] ?? 0) >= (axis[0] ?? 0);
  for (let i = 1; i < axis.length; i++) {
    const [a = 0, b = 0] = [axis[i - 1], axis[i]];
    if (rises ? value > b : value < b) continue;
    return Math.max(i - 1, i - 1 + (value - a) / (b - a));
  }
  return axis.length - 1;
}

/** Where a state of the engine lies in the table, as fractions of cells: the pulls' trace over a heat map. */
export function placeOf(
  table: EcuTable,
  axes: TableAxes,
  state: OperatingState,
  ambientPressure: number,
): { readonly row: number; readonly column: number } {
  const speed = fromSi(state.engineSpeed_rad_s, 'rpm');
  const pressure = axes.load.kind === 'absolute' ? state.boost + ambientPressure : state.boost;
  const load = fromSi(pressure, axes.load.unit);
  const [across, down] = axes.engineSpeed === 'across' ? [speed, load] : [load, speed];
  return { row: placeOn(table.down, down), column: placeOn(table.across, across) };
}

/** One flag per cell. */
export type CellMask = readonly (readonly boolean[])[];

/** Delivered over needed from which a cell counts as covered (field practice: within 15 %). */
const coveredFrom = 0.85;

export type Coverage = {
  readonly covered: CellMask;
  /** Covered by the spray, and never near a logged state. */
  readonly notDriven: number;
};

/**
 * Cells that the spray really covers: enough fluid arrives there, and pulls were there. What the control blends them
 * with when it reads between cells is the edge's matter, see stepCells.
 *
 * @param spray   needed and delivered fluid [m^3/s] at a state
 * @param driven  states that were logged under load; null where none are
 */
export function coveredCells(
  table: EcuTable,
  axes: TableAxes,
  ambientPressure: number,
  spray: (state: OperatingState) => { readonly needed: number; readonly delivered: number },
  driven: readonly OperatingState[] | null,
): Coverage {
  const fed = table.down.map((_, row) =>
    table.across.map((_, column) => {
      const { needed, delivered } = spray(stateOfCell(table, axes, row, column, ambientPressure));
      return delivered > 0 && delivered >= coveredFrom * needed;
    }),
  );
  const visited = table.down.map(() => table.across.map(() => driven === null));
  for (const state of driven ?? []) {
    const place = placeOf(table, axes, state, ambientPressure);
    // The control blends the four cells around a state: all of them were driven.
    for (const row of [Math.floor(place.row), Math.ceil(place.row)])
      for (const column of [Math.floor(place.column), Math.ceil(place.column)]) {
        const line = visited[row];
        if (line && column < line.length) line[column] = true;
      }
  }
  let notDriven = 0;
  const covered = fed.map((line, row) =>
    line.map((isFed, column) => {
      const wasThere = visited[row]?.[column] ?? false;
      if (isFed && !wasThere) notDriven++;
      return isFed && wasThere;
    }),
  );
  return { covered, notDriven };
}
