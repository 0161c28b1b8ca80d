import type { Note } from '../result/index.ts';
import { moistAirDensity } from './air/moist-air.ts';
import type { Car } from './car/car.ts';
import type { Conditions } from './conditions.ts';
import { type FormulaCard, input } from './explain.ts';
import { inputUncertainty, practice, standardGravity } from './practice.ts';

/** Force that the road and the air hold against the car at a speed, and what it was made from. */
export type RoadLoad = {
  /** F = a + b v + c v^2 [N, N s/m, N s^2/m^2]; slope is apart. */
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** Weight along the road, uphill positive [N]. */
  readonly slopeForce: number;
  /** Relative standard uncertainties of a with b, of c, and of all three as one; of the slope force in N. */
  readonly uncertainty: {
    readonly rolling: number;
    readonly drag: number;
    readonly whole: number;
    readonly slopeForce: number;
  };
  readonly notes: readonly Note[];
};

/**
 * Road load from a measured coast-down or from drag area and rolling coefficient.
 *
 *   F = a + b v + c v^2                                  the car's own coast-down, taken as it stands
 *   a = m g Crr cos(atan s), b = 0, c = rho CdA / 2      otherwise
 *   slope force = m g sin(atan s)
 *
 * @param grade             rise per level distance s, uphill positive; null takes the road as level and says so
 * @param gradeUncertainty  its standard uncertainty; as usual where it is not told
 *
 * A coast-down with a coefficient missing is left aside, and a note says so. It is not scaled to today's air: its own air
 * is not in the car file, and the uncertainty of its drag is that of air nobody read.
 * Valid:  car speeds in still air; wind is not in it (see two-way).
 * Source: 40 CFR 1066 for the form of the coast-down; common practice for the defaults.
 * Check:  1500 kg, Crr 0.012, CdA 0.65 m^2, 1.2 kg/m^3: 176.5 N + 0.39 v^2.
 */
export function roadLoad(
  car: Car,
  conditions: Conditions,
  grade: number | null,
  gradeUncertainty: number = grade === null ? inputUncertainty.gradeAssumed : inputUncertainty.gradeGiven,
): RoadLoad {
  const notes: Note[] = [];
  const angle = Math.atan(grade ?? 0);
  const weight = car.mass_kg * standardGravity;
  const slopeForce = weight * Math.sin(angle);
  const onDyno = conditions.place === 'dyno';
  if (grade === null && !onDyno) notes.push({ code: 'power/level-assumed', facts: {} });
  const slopeUncertainty = onDyno ? 0 : weight * gradeUncertainty;
  const measured = coastedLoad(car);
  if (measured)
    return {
      ...measured,
      slopeForce,
      uncertainty: { ...measured.uncertainty, slopeForce: slopeUncertainty },
      notes,
    };
  if (car.roadLoad && Object.values(car.roadLoad).some((x) => x !== null))
    notes.push({ code: 'power/road-load-incomplete', facts: {} });
  const dragArea = car.dragArea_m2 ?? practice.dragArea;
  const rolling = car.rollingCoefficient ?? practice.rollingCoefficient;
  if (car.dragArea_m2 === null) notes.push({ code: 'power/default-drag-area', facts: { dragArea } });
  if (car.rollingCoefficient === null)
    notes.push({ code: 'power/default-rolling', facts: { coefficient: rolling } });
  const air = airDensity(conditions);
  notes.push(...air.notes);
  const drag = car.dragArea_m2 === null ? inputUncertainty.dragAreaDefault : inputUncertainty.dragAreaGiven;
  return {
    a: weight * rolling * Math.cos(angle),
    b: 0,
    c: 0.5 * air.density * dragArea,
    slopeForce,
    uncertainty: {
      rolling:
        car.rollingCoefficient === null ? inputUncertainty.rollingDefault : inputUncertainty.rollingGiven,
      drag: Math.hypot(drag, air.uncertainty),
      whole: 0,
      slopeForce: slopeUncertainty,
    },
    notes,
  };
}

/** What the car file says of a coast-down; null unless all three coefficients are there. */
function coastedLoad({ roadLoad: given }: Car) {
  if (!given) return null;
  const { a_N: a, b_N_s_m: b, c_N_s2_m2: c, half_percent: half } = given;
  if (a === null || b === null || c === null) return null;
  // The interval is of the whole force, whose parts err together.
  const u = half === null ? inputUncertainty.roadLoadGiven : half / 196;
  return { a, b, c, uncertainty: { rolling: 0, drag: inputUncertainty.airDensityDefault, whole: u } };
}

/** Density of the air of the day [kg/m^3] with its relative uncertainty; the default where it is not known. */
export function airDensity(conditions: Conditions): {
  readonly density: number;
  readonly uncertainty: number;
  readonly notes: readonly Note[];
} {
  const { ambient_C, barometer_kPa, relativeHumidity_percent } = conditions;
  if (ambient_C === null || barometer_kPa === null) {
    const density = practice.airDensity;
    return {
      density,
      uncertainty: inputUncertainty.airDensityDefault,
      notes: [{ code: 'power/default-air', facts: { density } }],
    };
  }
  const density = moistAirDensity({
    pressure: barometer_kPa * 1000,
    temperature: ambient_C + 273.15,
    relativeHumidity: (relativeHumidity_percent ?? 100 * practice.relativeHumidity) / 100,
  });
  return { density, uncertainty: inputUncertainty.airDensityMeasured, notes: [] };
}

/** Total force against the car at speed v [N]. */
export function loadAt(load: RoadLoad, v: number): number {
  return load.a + load.slopeForce + v * (load.b + v * load.c);
}

export const explainRoadLoad: FormulaCard = {
  formula: 'F = a + b v + c v^2 + m g sin(atan s);  a = m g Crr cos(atan s), c = rho CdA / 2',
  inputs: [
    input('m', 'kg', 'mass as driven'),
    input('Crr', '1', 'rolling coefficient'),
    input('rho', 'kg/m^3', 'air density'),
    input('CdA', 'm^2', 'drag area'),
    input('s', '1', 'rise per distance'),
    input('v', 'm/s', 'road speed'),
  ],
  source: '40 CFR 1066 (coast-down form); defaults are common practice',
  validRange: 'still air, dry level or evenly sloping road',
};
