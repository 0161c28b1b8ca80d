import type { Row } from '../../core/compare/selection/rows.ts';
import { afterSetup, beforeSetup } from '../../core/compare/selection/rows.ts';
import type { Day } from './invented-session.ts';
import { normal, seeded } from './random.ts';

/**
 * The days of invented-session as levels alone: one band mean, one intake temperature and one pressure a pull, with no
 * curve behind them. Some ten times as quick; what is judged is the model of the day, not witnesses nor curves.
 */

/** Four places, so that every third of the band holds one. */
const speeds = Float64Array.from([350, 420, 490, 560]);
export const levelGrid = { engineSpeed_rad_s: speeds, band: [350, 560] as const };

/** What a curve's wander about its level leaves in the mean over a band of six of its lengths. */
const shapeLeft = 0.6;

/** Rows of a day as the judge's levels take them, entries `place` and `place + 1` being the two sides. */
export function levelRows(day: Day, place: number): Row[] {
  const uniform = seeded(day.seed);
  for (let i = 0; i < 20; i++) uniform();
  const gauss = normal(uniform);
  let order = 0;
  let wandered = 0;
  const nameOf = (e: number) => (e === place ? beforeSetup : e === place + 1 ? afterSetup : `e${e}`);
  return day.entries.flatMap((entry, e) =>
    Array.from({ length: entry.pulls }, (_, p) => {
      const unseen = day.driftPerPull * order + wandered - day.warmUp * (2 / 3) ** order;
      const boost = day.boostScatter * gauss();
      const intake = 308 + day.intakeRise * order + day.intakeScatter * gauss();
      const level =
        Math.log1p(entry.share) +
        day.repeatability * (entry.scatter ?? 1) * gauss() +
        shapeLeft * day.shape * gauss() +
        unseen -
        day.intakeCost * (intake - 308) +
        (day.boostMatters ? boost / 200_000 : 0);
      const row = rowOf(`e${e}-${p}`, order, level, intake, 200_000 + boost, {
        group: entry.repeats === undefined ? nameOf(e) : `e${e}`,
        setup: nameOf(entry.repeats ?? e),
      });
      order += 1;
      if (day.wander > 0) wandered += day.wander * gauss();
      return row;
    }),
  );
}

function rowOf(
  id: string,
  order: number,
  level: number,
  intake: number,
  pressure: number,
  at: { readonly group: string; readonly setup: string },
): Row {
  const power = new Float64Array(speeds.length).fill(Math.exp(level));
  const flat = (value: number) => new Float64Array(speeds.length).fill(value);
  return {
    pull: {
      id,
      entryId: null,
      order,
      gear: 3,
      power: {
        engineSpeed_rad_s: speeds,
        wheelPower: power,
        enginePower: power,
        wheelPowerError: power.map((p) => 0.002 * p),
        systematicError: power,
        time: Float64Array.from([0, 3, 6, 9]),
        bandwidth: 0.4,
        basis: 'engine-speed',
        correction: { standard: 'none', factor: 1 },
        notes: [],
      },
      curves: { intakeTemperature: flat(intake), manifoldPressure: flat(pressure) },
      start: { intakeTemperature: intake },
      events: { knockEvents: null, knockRetard_rad: 0 },
      flags: [],
      isComplete: true,
      direction: null,
      conditions: null,
      mass_kg: 1400,
    },
    chosen: null,
    ...at,
    power,
    level,
  };
}
