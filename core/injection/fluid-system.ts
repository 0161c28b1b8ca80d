import {
  type BucketFit,
  conductance,
  type DeliverySystem,
  type FlowCorrection,
  fitBucketTest,
  type Metering,
  meteredPoint,
  noCorrection,
  type OperatingPoint,
  type Pump,
  type PumpCurve,
  pumpFromPoints,
  pumpFromTwo,
} from '../delivery/index.ts';
import {
  type Mix,
  mixByFinishedVolume,
  mixByMass,
  mixDensity,
  mixPoured,
  mixViscosity,
} from '../fluids/index.ts';
import { fail, type Note, ok, type Problem, type Result } from '../result/index.ts';
import { celsius, toSi } from '../units/index.ts';
import { practice } from './practice.ts';
import { inField, mixField, pumpCurveField } from './problem-field.ts';
import type { Place, Setup } from './setup.ts';

/** A nozzle of the user's list, SI. */
export type ListedNozzle = {
  readonly name: string;
  readonly conductance: number;
  readonly place: Place | null;
  readonly most: number;
};

/** Nozzles in use together: conductances of one place added up. */
export type NozzleGroup = readonly { readonly conductance: number; readonly place: Place | null }[];

/** The group that single nozzles make: flows of parallel nozzles at one place add up. */
export function groupOf(nozzles: readonly Pick<ListedNozzle, 'conductance' | 'place'>[]): NozzleGroup {
  const group: { conductance: number; place: Place | null }[] = [];
  for (const { conductance, place } of nozzles) {
    const same = group.find((g) => g.place === place);
    if (same) same.conductance += conductance;
    else group.push({ conductance, place });
  }
  return group;
}

/** The fluid system of a setup with its faults found and its units gone. */
export type FluidSystemModel = {
  readonly mix: Mix;
  readonly density: number;
  readonly viscosity: number;
  readonly nozzles: readonly ListedNozzle[];
  readonly metering: Metering;
  readonly correction: FlowCorrection;
  readonly bucket: BucketFit | null;
  readonly ambientPressure: number;
  /** The system around a group of nozzles, while the manifold is at a boost [Pa gauge]. */
  readonly around: (nozzles: NozzleGroup, boost: number) => DeliverySystem;
  /** Flow at a controller setting. */
  readonly point: (nozzles: NozzleGroup, boost: number, setting: number) => Result<OperatingPoint>;
  readonly notes: readonly Note[];
};

function mixOf(setup: Setup): Result<Mix> {
  const { fluid_C } = setup.fluidSystem;
  const mix = setup.fluidSystem.mix ?? practice.mix;
  const shares = { methanol: mix.methanol_percent / 100, ethanol: mix.ethanol_percent / 100 };
  if (mix.by === 'mass') return mixByMass(shares);
  return mix.by === 'finished' ? mixByFinishedVolume(shares) : mixPoured(shares, celsius(fluid_C));
}

function pumpOf(setup: Setup): Result<Pump> {
  const { pump, metering } = setup.fluidSystem;
  let curve: Result<PumpCurve>;
  if (pump.points.length > 0)
    curve = pumpFromPoints(
      pump.points.map((p) => ({ rise: p.pressure_kPa * 1e3, flow: toSi(p.flow_mL_min, 'mL/min') })),
    );
  else if (pump.shutPressure_kPa !== null && pump.openFlow_mL_min !== null)
    curve = pumpFromTwo(pump.shutPressure_kPa * 1e3, toSi(pump.openFlow_mL_min, 'mL/min'));
  else if (pump.control !== 'none' && pump.setPressure_kPa !== null && metering !== 'pump-speed') {
    // A pump whose regulator is known and whose curve is not is taken to hold its pressure, and that is said.
    const plenty = pump.setPressure_kPa * 1e3 + 2e6;
    curve = ok({ flow: [0, 1], rise: [plenty, plenty] });
  } else
    curve = fail({
      code: 'delivery/pump-unknown',
      facts: {},
      where: { field: 'fluidSystem.pump.shutPressure_kPa' },
    });
  if (!curve.ok) return curve;
  if (pump.control === 'none') return ok({ curve: curve.value, setPressure: null, reference: 'ambient' });
  if (pump.setPressure_kPa === null)
    return fail({
      code: 'delivery/set-pressure-missing',
      facts: {},
      where: { field: 'fluidSystem.pump.setPressure_kPa' },
    });
  return ok({ curve: curve.value, setPressure: pump.setPressure_kPa * 1e3, reference: pump.reference });
}

function nozzlesOf(setup: Setup): Result<readonly ListedNozzle[]> {
  const listed = setup.fluidSystem.nozzles;
  const where = { field: 'fluidSystem.nozzles' };
  if (listed.length === 0) return fail({ code: 'delivery/no-nozzle', facts: {}, where });
  const problems: Problem[] = [];
  for (const n of listed) {
    if (!(n.flow_mL_min > 0))
      problems.push({
        code: 'delivery/nozzle-flow-not-positive',
        facts: { name: n.name, flow: toSi(n.flow_mL_min, 'mL/min') },
        where,
      });
  }
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);
  return ok(
    listed.map((n) => ({
      name: n.name,
      most: n.count ?? 3,
      place: n.place ?? setup.fluidSystem.place,
      conductance: conductance({
        flow: toSi(n.flow_mL_min, 'mL/min'),
        pressureDifference: n.ratedPressure_kPa * 1e3,
        density: n.ratedDensity_kg_m3,
      }),
    })),
  );
}

/** Absolute pressure where the nozzle sits, while the manifold is at a boost [Pa]. */
function backPressure(
  place: Place | null,
  ambientPressure: number,
  boost: number,
  coolerLoss: number,
): number {
  if (place === 'before-compressor') return ambientPressure;
  return ambientPressure + boost + (place === 'before-cooler' ? coolerLoss : 0);
}

/** The fitted nozzles; null where none is named. */
export function fittedNozzles(setup: Setup, listed: readonly ListedNozzle[]): Result<NozzleGroup | null> {
  const { fitted } = setup.fluidSystem;
  if (fitted.length === 0) return ok(null);
  const found: ListedNozzle[] = [];
  for (const name of fitted) {
    const nozzle = listed.find((n) => n.name === name);
    if (!nozzle)
      return fail({
        code: 'injection/no-such-nozzle',
        facts: { name },
        where: { field: 'fluidSystem.nozzles' },
      });
    found.push(nozzle);
  }
  return ok(groupOf(found));
}

/**
 * The setup's fluid system, ready to be asked for flow.
 *
 * Errors: every fault of mix, pump, nozzles and bucket test at once.
 */
export function fluidSystemModel(setup: Setup): Result<FluidSystemModel> {
  const { fluidSystem, engine, air } = setup;
  const poured = mixOf(setup);
  const mix = inField(poured, mixField(setup, poured));
  const [pump, nozzles] = [inField(pumpOf(setup), pumpCurveField(setup)), nozzlesOf(setup)];
  const problems = [mix, pump, nozzles].flatMap((r) => (r.ok ? [] : [...r.problems]));
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);
  if (!mix.ok || !pump.ok || !nozzles.ok) throw new Error('a failed part carries a problem');
  const temperature = celsius(fluidSystem.fluid_C);
  const density = inField(mixDensity(mix.value, temperature), 'fluidSystem.fluid_C');
  if (!density.ok) return density;
  const viscosity = inField(mixViscosity(mix.value, temperature), 'fluidSystem.fluid_C');
  if (!viscosity.ok) return viscosity;

  const ambientPressure = (air.barometer_kPa ?? 101.325) * 1e3;
  const { length_m, bore_mm } = fluidSystem.line;
  const line = length_m === null || bore_mm === null ? null : { length: length_m, bore: bore_mm / 1e3 };
  const liquid = { density: density.value, viscosity: viscosity.value };
  const around = (group: NozzleGroup, boost: number): DeliverySystem => ({
    nozzles: group.map(({ conductance: k, place }) => ({
      conductance: k,
      backPressure: backPressure(place, ambientPressure, boost, (engine.coolerLoss_kPa ?? 0) * 1e3),
    })),
    pump: pump.value,
    line,
    crackingPressure: (fluidSystem.checkValve_kPa ?? 0) * 1e3,
    liquid,
    ambientPressure,
    manifoldPressure: ambientPressure + boost,
  });

  const notes: Note[] = [];
  if (fluidSystem.mix === null)
    notes.push({ code: 'injection/practice-default', facts: { what: 'mix', value: 0.5 } });
  const { points, shutPressure_kPa, openFlow_mL_min } = fluidSystem.pump;
  if (points.length === 0 && (shutPressure_kPa === null || openFlow_mL_min === null))
    notes.push({ code: 'delivery/pump-curve-unknown', facts: { setPressure: pump.value.setPressure ?? 0 } });

  let correction = noCorrection;
  let bucket: BucketFit | null = null;
  if (fluidSystem.bucket.points.length > 0) {
    const fitted = fittedNozzles(setup, nozzles.value);
    if (!fitted.ok) return fitted;
    // Without a word on what is fitted, a list of one is what was tested.
    const tested = fitted.value ?? groupOf(nozzles.value.slice(0, 1));
    const open = { ...around(tested, 0), manifoldPressure: ambientPressure };
    const fit = inField(bucketFit(setup, open, density.value), 'fluidSystem.bucket.points');
    if (!fit.ok) return fit;
    bucket = fit.value;
    correction = fit.value.correction;
  }
  return ok({
    mix: mix.value,
    density: density.value,
    viscosity: viscosity.value,
    nozzles: nozzles.value,
    metering: fluidSystem.metering,
    correction,
    bucket,
    ambientPressure,
    around,
    point: (group, boost, setting) =>
      meteredPoint(around(group, boost), fluidSystem.metering, setting, correction),
    notes,
  });
}

function bucketFit(setup: Setup, open: DeliverySystem, density: number): Result<BucketFit> {
  const { bucket, metering } = setup.fluidSystem;
  const atAmbient = {
    ...open,
    nozzles: open.nozzles.map((n) => ({ ...n, backPressure: open.ambientPressure })),
  };
  const problems: Problem[] = [];
  const points = bucket.points.flatMap((p, i) => {
    const shared = { setting: p.setting_percent / 100, time: p.time_s, timeHalf: bucket.time_s };
    // Weighing beats reading a scale on a bottle.
    if (p.mass_g !== null)
      return [
        {
          ...shared,
          volume: (p.mass_g * 1e-3) / density,
          volumeHalf: (bucket.mass_g * 1e-3) / density,
        },
      ];
    if (p.volume_mL !== null)
      return [{ ...shared, volume: p.volume_mL * 1e-6, volumeHalf: bucket.volume_mL * 1e-6 }];
    problems.push({ code: 'delivery/bucket-no-amount', facts: { point: i + 1 } });
    return [];
  });
  const [first, ...rest] = problems;
  return first ? fail(first, ...rest) : fitBucketTest(atAmbient, metering, points);
}
