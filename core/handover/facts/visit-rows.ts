import { dryAirGasConstant, rollingRadius } from '../../power/index.ts';
import { celsius, toSi } from '../../units/index.ts';
import { asLeftOf } from './as-left.ts';
import { edge } from './edge.ts';
import type { HandoverFacts } from './facts-schema.ts';
import type { HandoverSource } from './source.ts';
import type { visitConditions, visitSettings } from './visit-schema.ts';

type VisitFacts = NonNullable<HandoverFacts['visit']>;
type Value = string | number | null;
type State = VisitFacts['settings'][number]['state'];

/** Shares of a value within which two days count as the same where no uncertainty was noted (common practice). */
const sameMass = 0.01;
const sameRadius = 0.005;
/** Density of the air, where power is not corrected for it (common practice). */
const sameAir = 0.01;

/** Of the pulls: one value, several in one text, or null where none tells. */
function one(values: readonly (string | number | null)[]): Value {
  const known = [...new Set(values)].filter((v) => v !== null).sort();
  return known.length === 0 ? null : known.length === 1 ? (known[0] ?? null) : known.join(', ');
}

function row<C extends string>(code: C, unit: string, last: Value, now: Value, isSame = last === now) {
  const state: State = last === null || now === null ? 'unknown' : isSame ? 'same' : 'differs';
  return { code, unit, last, now, state };
}

/** Within a share of each other; nothing is within a share of what is not known. */
function near(last: number | null, now: number | null, share: number): boolean {
  return last !== null && now !== null && Math.abs(now - last) <= share * Math.min(last, now);
}

/** What power rests on, visit by visit. What nobody noted is unknown, not the same. */
export function visitConditionRows(last: HandoverSource, now: HandoverSource): VisitFacts['conditions'] {
  const of = (visit: HandoverSource) => {
    const { car, conditions } = visit.session;
    const pulls = visit.pulls.flatMap((e) => e.pulls);
    const { ambient_C, barometer_kPa } = conditions;
    const { radius } = rollingRadius(car);
    return {
      car,
      name: car.name.trim() === '' ? null : car.name.trim(),
      basis: one(pulls.map((p) => p.power.basis)),
      gear: one(pulls.map((p) => p.gear)),
      radius: radius === null ? null : Math.round(radius * 1e4) / 10,
      place: conditions.place,
      // Ideal gas, dry: enough to see whether two days are alike within a percent.
      density:
        ambient_C === null || barometer_kPa === null
          ? null
          : Number((toSi(barometer_kPa, 'kPa') / (dryAirGasConstant * celsius(ambient_C))).toPrecision(4)),
    };
  };
  const [a, b] = [of(last), of(now)];
  const isCorrected = a.car.correction !== 'none' && b.car.correction !== 'none';
  const [massA, massB] = [a.car.massUncertainty_kg, b.car.massUncertainty_kg];
  const noted = massA === null || massB === null ? null : Math.hypot(massA, massB);
  const isSameMass =
    noted === null
      ? near(a.car.mass_kg, b.car.mass_kg, sameMass)
      : Math.abs(b.car.mass_kg - a.car.mass_kg) <= noted;
  const code = (c: (typeof visitConditions)[number]) => c;
  return [
    row(code('car'), '', a.name, b.name),
    row(code('basis'), '', a.basis, b.basis),
    row(code('correction'), '', a.car.correction, b.car.correction),
    // A correction takes the air out; without one it must be alike.
    ...(isCorrected
      ? []
      : [row(code('air'), 'kg/m3', a.density, b.density, near(a.density, b.density, sameAir))]),
    row(code('gear'), '', a.gear, b.gear),
    row(code('mass'), 'kg', a.car.mass_kg, b.car.mass_kg, isSameMass),
    row(code('tyre'), 'mm', a.radius, b.radius, near(a.radius, b.radius, sameRadius)),
    row(code('place'), '', a.place, b.place),
  ];
}

/** What was set as the car was left, visit by visit. */
export function visitSettingRows(last: HandoverSource, now: HandoverSource): VisitFacts['settings'] {
  const of = (visit: HandoverSource) => {
    const left = asLeftOf(visit);
    const engine = visit.session.setup?.engine ?? null;
    return {
      ...left,
      start: left.isSprayOn ? left.sprayStart_kPa : 'off',
      nozzle: left.nozzles.length > 0 ? left.nozzles.map((z) => z.name).join(' + ') : null,
      fluid: left.mix && `${left.mix.by} ${left.mix.methanol_percent} ${left.mix.ethanol_percent}`,
      octane: edge(engine?.octane_RON, ''),
    };
  };
  const [a, b] = [of(last), of(now)];
  const code = (c: (typeof visitSettings)[number]) => c;
  return [
    row(code('boost'), 'kPa', a.boost_kPa, b.boost_kPa),
    { ...row(code('spark'), 'deg', a.spark_deg ?? 0, b.spark_deg ?? 0), state: 'own-origin' },
    row(code('mixture'), 'lambda', a.lambda, b.lambda),
    row(code('sprayStart'), 'kPa', a.start, b.start),
    row(code('nozzle'), '', a.nozzle, b.nozzle),
    row(code('fluid'), '', a.fluid, b.fluid),
    row(code('fuel'), '', a.octane, b.octane),
  ];
}
