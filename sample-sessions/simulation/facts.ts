import { usual } from './day.ts';
import { drive } from './drive.ts';
import { hatch } from './hatch.ts';
import type { LoggedPull } from './logger.ts';
import type { Outing } from './outing.ts';
import { bandMean, consumption, curveOf, round } from './truth.ts';
import type { Tune } from './tune.ts';

/** Watts to kilowatts with three decimals. */
export const kW = (curve: readonly (number | null)[]) =>
  curve.map((w) => (w === null ? null : round(w / 1000, 3)));

/** One pull of this tune without luck, noise or wandering: what the tune is worth. */
export function nominal(tune: Tune) {
  const trace = drive(
    tune,
    [
      { kind: 'cruise', seconds: 3, luck: usual },
      { kind: 'pull', luck: usual },
    ],
    0,
    null,
  );
  const wheel = curveOf(trace, 0, 'wheelPower');
  return { trace, wheel, mean: bandMean(wheel) };
}

/** A tune in the units that a person reads. */
export function tuneFacts(tune: Tune) {
  return {
    boostTarget_kPa: tune.boostTarget / 1000,
    loadedSpark_deg: tune.loadedSpark_deg,
    lambdaTarget: tune.lambdaTarget,
    isSprayOn: tune.isSprayOn,
  };
}

/** The true pulls of one file, on its clock. */
export function pullFacts(driven: Outing, logged: readonly LoggedPull[]) {
  return driven.pulls.map(({ trace, index, luck }, i) => {
    const { fluid_mL, fluidOverFuel } = consumption(trace, index);
    const pull = trace.pulls[index] ?? { from: 0, to: 1 };
    const speed = trace.fields.engineSpeed_rpm;
    return {
      start_s: round(logged[i]?.start_s ?? Number.NaN, 3),
      end_s: round(logged[i]?.end_s ?? Number.NaN, 3),
      gear: hatch.gear,
      rpmFrom: round(speed[pull.from] ?? 0, 0),
      rpmTo: round(speed[pull.to - 1] ?? 0, 0),
      fluid_mL: round(fluid_mL, 1),
      fluidOverFuel: round(fluidOverFuel, 3),
      headwind_m_s: round(luck.headwind, 3),
      boostOffset_kPa: round(luck.boostOffset / 1000, 3),
      wheelPower_kW: kW(curveOf(trace, index, 'wheelPower')),
    };
  });
}

/** Effect of going from one tune to another at the usual luck, over the band. */
export function effect(before: Tune, after: Tune) {
  const [a, b] = [nominal(before), nominal(after)];
  return {
    effect_kW: round((b.mean - a.mean) / 1000, 3),
    effect_percent: round((b.mean / a.mean - 1) * 100, 3),
    delta_kW: kW(b.wheel.map((w, i) => (w === null ? null : w - (a.wheel[i] ?? Number.NaN)))),
  };
}
