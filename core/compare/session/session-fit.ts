import { sharedBand, spooledBand } from '../band/common-band.ts';
import { type Grid, gridOver } from '../band/grid.ts';
import type { JudgeInput } from '../judge-input.ts';
import { type DayFit, fitDay } from '../levels/day-fit.ts';
import { earlierDay } from '../levels/earlier-day.ts';
import { noiseFloor } from '../levels/find-effect.ts';
import {
  directionSuspect,
  driftSuspect,
  orderOf,
  readingSuspect,
  settlingSuspect,
} from '../levels/nuisances.ts';
import { type ChosenPull, choosePulls } from '../selection/choose-pulls.ts';
import { leaveOutOdd } from '../selection/leave-out-odd.ts';
import { rowOf } from '../selection/rows.ts';
import { inUsualGear } from '../selection/same-gear.ts';
import type { SessionEntry } from './session-table.ts';

/** All entries of a session on one grid, with one fit. */
export type SessionFit = {
  readonly grid: Grid;
  /** Null where no repeatability is known. */
  readonly day: DayFit | null;
  /** Index of the entry's setup in the fit; null where none of its pulls counts. */
  readonly setupOf: (entryId: string) => number | null;
  readonly setups: number;
  readonly pullsOf: (entryId: string) => number;
  /** Mean of the entry's own pulls over the band [W]. */
  readonly meanOf: (entryId: string) => number | null;
};

/** Null where fewer than one entry has pulls, or their pulls share no band. */
export function fitSession(
  entries: readonly SessionEntry[],
  options: Pick<JudgeInput, 'band_rad_s' | 'prior'>,
): SessionFit | null {
  const chosen = entries.map((entry) => ({
    entry,
    // One side alone: what counts of an entry does not depend on what it is compared with.
    pulls: choosePulls({ before: entry.pulls, after: [] }).before,
  }));
  const gear = usualGear(chosen.flatMap((c) => c.pulls));
  const inNumber = (c: ChosenPull) => gear === null || c.pull.gear === null || c.pull.gear === gear;
  const usual = inUsualGear(chosen.flatMap((c) => c.pulls.filter(inNumber).map((p) => p.pull)));
  const usable = chosen.map(({ entry, pulls }) => ({ entry, pulls: pulls.filter((c) => usual.has(c.pull)) }));
  const bands = usable.flatMap((u) => u.pulls.map((c) => c.band));
  if (bands.length === 0) return null;
  const common = sharedBand(bands);
  const asked = options.band_rad_s ?? null;
  const counted = usable.flatMap((u) => u.pulls.map((c) => c.pull));
  const band = common && (asked ? sharedBand([common, asked]) : spooledBand(common, counted));
  if (!band) return null;
  const grid = gridOver(band);
  const rootOf = (entry: SessionEntry) => entry.repeats ?? entry.id;
  const { rows } = leaveOutOdd(
    usable.flatMap(({ entry, pulls }) =>
      pulls.flatMap((c) => rowOf(grid, c.pull, c, entry.id, rootOf(entry)) ?? []),
    ),
  );
  const setups = [...new Set(rows.map((r) => r.setup))];
  const setupOf = Int32Array.from(rows, (r) => setups.indexOf(r.setup));
  const readings = Float64Array.from(rows, (r) => r.pull.start.intakeTemperature ?? Number.NaN);
  const pulls = rows.map((r) => r.pull);
  const entryIds = [...new Set(rows.map((r) => r.group))];
  const { known } = earlierDay(
    entryIds.map((id) => rows.filter((r) => r.group === id).map((r) => r.level)),
    options.prior ?? null,
  );
  const everySetup = setups.map((_, i) => i);
  const intake = readingSuspect('intake', readings, setupOf, everySetup);
  const direction = directionSuspect(pulls, setupOf);
  const drift = driftSuspect(pulls);
  const settling = settlingSuspect(pulls);
  const day = fitDay({
    levels: Float64Array.from(rows, (r) => r.level),
    setupOf,
    setups: setups.length,
    prior: known,
    varianceFloor: noiseFloor(rows),
    order: orderOf(pulls),
    suspects: {
      ...(intake && { intake }),
      ...(direction && { direction }),
      ...(drift && { drift }),
      ...(settling && { settling }),
    },
  });
  const rowsOf = (id: string) => rows.filter((r) => r.group === id);
  return {
    grid,
    day,
    setups: setups.length,
    setupOf: (id) => {
      const row = rowsOf(id)[0];
      return row ? setups.indexOf(row.setup) : null;
    },
    pullsOf: (id) => rowsOf(id).length,
    meanOf: (id) => {
      const own = rowsOf(id);
      return own.length === 0 ? null : Math.exp(own.reduce((sum, r) => sum + r.level, 0) / own.length);
    },
  };
}

function usualGear(pulls: readonly ChosenPull[]): number | null {
  const counts = new Map<number, number>();
  for (const { pull } of pulls) {
    if (pull.gear !== null) counts.set(pull.gear, (counts.get(pull.gear) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}
