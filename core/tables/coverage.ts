import { fromSi, toSi } from '../units/index.ts';
import type { EcuTable } from './ecu-table.ts';

/** What an axis of load counts in: absolute or gauge manifold pressure, or throttle. */
export const loadKinds = ['absolute', 'gauge', 'throttle'] as const;
export type LoadUnit = { readonly kind: (typeof loadKinds)[number]; readonly unit: string };

/** Which axis is engine speed [rpm]; the other is load. */
export type TableAxes = { readonly engineSpeed: 'across' | 'down'; readonly load: LoadUnit };

/** Engine speeds are the axis with the larger numbers, past 1500 of which no load goes (common practice). */
export function guessAxes(table: EcuTable): TableAxes {
  const most = (axis: readonly number[]) => Math.max(...axis.map(Math.abs));
  const engineSpeed = most(table.across) >= most(table.down) ? 'across' : 'down';
  const load = engineSpeed === 'across' ? table.down : table.across;
  // A throttle is shut at 0 and full at 100; manifold pressure in kPa never reads 0.
  if (Math.min(...load) === 0 && most(load) === 100)
    return { engineSpeed, load: { kind: 'throttle', unit: '%' } };
  // Bar below 5, else kPa; below ambient down to idle only absolute pressure goes.
  const unit = most(load) <= 5 ? 'bar' : most(load) <= 60 ? 'psi' : 'kPa';
  const lowest = fromSi(toSi(Math.min(...load), unit), 'kPa');
  return { engineSpeed, load: { kind: lowest > 10 && unit === 'kPa' ? 'absolute' : 'gauge', unit } };
}

export type OperatingState = {
  readonly engineSpeed_rad_s: number;
  /** [Pa gauge]; NaN where it is not known. */
  readonly boost: number;
  /** Share; left out where it is not known. */
  readonly throttle?: number;
  /** As logged [m^3/s]; left out where it is not known. */
  readonly fluidFlow?: number;
};

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
  const engineSpeed_rad_s = toSi(axes.engineSpeed === 'across' ? across : down, 'rpm');
  const load = toSi(axes.engineSpeed === 'across' ? down : across, axes.load.unit);
  if (axes.load.kind === 'throttle') return { engineSpeed_rad_s, boost: Number.NaN, throttle: load };
  return { engineSpeed_rad_s, boost: axes.load.kind === 'absolute' ? load - ambientPressure : load };
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
  const si = axes.load.kind === 'throttle' ? (state.throttle ?? Number.NaN) : pressure;
  const load = fromSi(si, axes.load.unit);
  const [across, down] = axes.engineSpeed === 'across' ? [speed, load] : [load, speed];
  return { row: placeOn(table.down, down), column: placeOn(table.across, across) };
}

/** One flag per cell. */
export type CellMask = readonly (readonly boolean[])[];

/** Delivered over needed from which a cell counts as covered (common practice: within 15 %). */
const coveredFrom = 0.85;

export type Coverage = {
  readonly covered: CellMask;
  /** Covered by the spray, and never near a logged state. */
  readonly notDriven: number;
  /** Covered by the curve, and the logged flow was short of the need. */
  readonly short: number;
};

/** Needed and delivered fluid [m^3/s] at a state. */
export type SprayAt = (state: OperatingState) => { readonly needed: number; readonly delivered: number };

const isFed = (delivered: number, needed: number) => delivered > 0 && delivered >= coveredFrom * needed;

/**
 * Cells that the spray really covers: enough fluid arrives there by the injection curve, pulls were there, and where the
 * flow was logged it arrived. Over throttle a cell says nothing of boost: there the logged states decide alone. What the
 * control blends the cells with when it reads between them is the edge's matter, see stepCells.
 *
 * @param driven  states that were logged under load; null where none are: then the curve decides alone
 */
export function coveredCells(
  table: EcuTable,
  axes: TableAxes,
  ambientPressure: number,
  spray: SprayAt,
  driven: readonly OperatingState[] | null,
): Coverage {
  const sums = visits(table, axes, ambientPressure, spray, driven ?? []);
  let notDriven = 0;
  let short = 0;
  const covered = table.down.map((_, row) =>
    table.across.map((__, column) => {
      const sum = sums[row]?.[column];
      const state = stateOfCell(table, axes, row, column, ambientPressure);
      const byCurve = Number.isFinite(state.boost)
        ? spray(state)
        : { needed: sum?.needed ?? 0, delivered: sum?.delivered ?? 0 };
      if (!isFed(byCurve.delivered, byCurve.needed)) return false;
      if (driven === null) return true;
      if (!sum || sum.states === 0) {
        notDriven++;
        return false;
      }
      if (sum.loggedNeed > 0 && !isFed(sum.logged, sum.loggedNeed)) {
        short++;
        return false;
      }
      return true;
    }),
  );
  return { covered, notDriven, short };
}

type Visit = { states: number; needed: number; delivered: number; logged: number; loggedNeed: number };

/** What the logged states around each cell needed and got, summed: one reading of a flow meter decides nothing. */
function visits(
  table: EcuTable,
  axes: TableAxes,
  ambientPressure: number,
  spray: SprayAt,
  driven: readonly OperatingState[],
): Visit[][] {
  const sums = table.down.map(() =>
    table.across.map((): Visit => ({ states: 0, needed: 0, delivered: 0, logged: 0, loggedNeed: 0 })),
  );
  for (const state of driven) {
    const place = placeOf(table, axes, state, ambientPressure);
    if (!Number.isFinite(place.row) || !Number.isFinite(place.column)) continue;
    const { needed, delivered } = Number.isFinite(state.boost) ? spray(state) : { needed: 0, delivered: 0 };
    // The control blends the four cells around a state: all of them were driven.
    for (const row of new Set([Math.floor(place.row), Math.ceil(place.row)]))
      for (const column of new Set([Math.floor(place.column), Math.ceil(place.column)])) {
        const sum = sums[row]?.[column];
        if (!sum) continue;
        sum.states++;
        sum.needed += needed;
        sum.delivered += delivered;
        if (state.fluidFlow !== undefined && Number.isFinite(state.fluidFlow)) {
          sum.logged += state.fluidFlow;
          sum.loggedNeed += needed;
        }
      }
  }
  return sums;
}
