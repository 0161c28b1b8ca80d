import { dryAir, petrolBlend, petrolDensity } from '../fluids/index.ts';
import { fail, type Note, ok, type Result } from '../result/index.ts';
import { celsius, type Explanation, rpm, toSi } from '../units/index.ts';
import { interpolate } from './interpolate.ts';
import { practice } from './practice.ts';
import { type PullPath, speedAtBoost } from './pull-path.ts';
import type { Setup } from './setup.ts';

/** What fuel flow was worked out from. */
export type FuelBasis = 'power' | 'air' | 'injectors';

export type FuelModel = {
  readonly basis: FuelBasis;
  /** Fuel of the whole engine at engine speed [rad/s] and boost [Pa gauge], in kg/s. */
  readonly at: (engineSpeed_rad_s: number, boost: number) => number;
  readonly explanation: Explanation;
  readonly notes: readonly Note[];
};

const gasConstant = 8.314462618;

/** A default of practice, said once where it is taken. */
function orPractice(
  value: number | null,
  what: 'fuelConsumption' | 'volumetricEfficiency' | 'manifoldTemperature' | 'lambda',
  notes: Note[],
): number {
  if (value !== null) return value;
  notes.push({ code: 'injection/practice-default', facts: { what, value: practice[what] } });
  return practice[what];
}

/**
 * Fuel from crank power and brake-specific consumption.
 *
 *   m = P b,   P(n, boost) = P_curve(n) (p_a + boost) / (p_a + boost of the pull at n)
 *
 * Without a power curve power goes with engine speed and absolute pressure from its peak.
 * Valid: full load, 0.30 to 0.36 kg/kWh (common practice).
 */
function fromPower(setup: Setup, path: PullPath, ambientPressure: number): FuelModel | null {
  const { engine } = setup;
  const notes: Note[] = [];
  const curve = [...engine.powerCurve].sort((a, b) => a.engineSpeed_rpm - b.engineSpeed_rpm);
  const best = curve.reduce((most, p) => Math.max(most, p.power_kW), 0);
  const peak = (engine.peakPower_kW ?? best) * 1e3;
  if (!(peak > 0)) return null;
  const consumption = orPractice(
    engine.fuelConsumption_kg_kWh === null ? null : engine.fuelConsumption_kg_kWh / 3.6e6,
    'fuelConsumption',
    notes,
  );
  const speeds = curve.map((p) => rpm(p.engineSpeed_rpm));
  // A curve driven at less than the target is raised to it: the shape is the engine's, the height the plan's.
  const powers = curve.map((p) => (p.power_kW * 1e3 * peak) / (best * 1e3 || 1));
  const at = (n: number, boost: number) => {
    if (curve.length < 2)
      return (
        ((peak * n) / path.peakSpeed_rad_s) *
        ((ambientPressure + boost) / (ambientPressure + path.peakBoost)) *
        consumption
      );
    const driven = interpolate(path.engineSpeed_rad_s, path.boost, n);
    const power = interpolate(speeds, powers, n);
    return power * ((ambientPressure + boost) / (ambientPressure + driven)) * consumption;
  };
  return {
    basis: 'power',
    at,
    notes,
    explanation: {
      id: 'injection/fuel',
      formula: 'm = P b',
      tex: String.raw`\dot m = P\,b`,
      inputs: [
        { symbol: 'P', value: peak, kind: 'power' },
        { symbol: 'b', value: consumption, kind: 'massPerEnergy' },
      ],
      source: 'definition of brake-specific consumption; 0.30 to 0.36 kg/kWh at full load: common practice',
      validRange: [{ symbol: 'b', from: 0.3 / 3.6e6, to: 0.36 / 3.6e6, kind: 'massPerEnergy' }],
    },
  };
}

/**
 * Fuel from the air that the engine swallows.
 *
 *   m = VE V (n / 4 pi) p M / (R T) / (lambda L)
 *
 * Valid: four-stroke, full load; VE 0.85 to 1.05 against the manifold's own density (common practice).
 */
function fromAir(
  setup: Setup,
  path: PullPath,
  ambientPressure: number,
  stoichiometric: number,
): FuelModel | null {
  const { engine } = setup;
  if (engine.displacement_L === null) return null;
  const notes: Note[] = [];
  const displacement = engine.displacement_L * 1e-3;
  const efficiency = orPractice(
    engine.volumetricEfficiency_percent === null ? null : engine.volumetricEfficiency_percent / 100,
    'volumetricEfficiency',
    notes,
  );
  const temperature = orPractice(
    engine.manifold_C === null ? null : celsius(engine.manifold_C),
    'manifoldTemperature',
    notes,
  );
  const lambda = orPractice(engine.lambda, 'lambda', notes);
  const at = (n: number, boost: number) => {
    const density = ((ambientPressure + boost) * dryAir.molarMass) / (gasConstant * temperature);
    return (efficiency * displacement * (n / (4 * Math.PI)) * density) / (lambda * stoichiometric);
  };
  return {
    basis: 'air',
    at,
    notes,
    explanation: {
      id: 'injection/fuel',
      formula: 'm = VE V (n/2) p M / (R T) / (lambda L)',
      tex: String.raw`\dot m = \frac{\eta_v V \frac{n}{2}\,\frac{p M}{R T}}{\lambda L}`,
      inputs: [
        { symbol: 'VE', value: efficiency, kind: 'share' },
        { symbol: 'V', value: displacement, kind: 'volume' },
        { symbol: 'n', value: path.peakSpeed_rad_s, kind: 'engineSpeed' },
        { symbol: 'p', value: ambientPressure + path.peakBoost, kind: 'pressure' },
        { symbol: 'T', value: temperature, kind: 'temperature' },
        { symbol: 'lambda', value: lambda, kind: 'lambda' },
        { symbol: 'L', value: stoichiometric, kind: 'number' },
      ],
      source:
        'ideal gas and definition of volumetric efficiency, Heywood, Internal Combustion Engine Fundamentals, ch. 2 (from memory)',
      validRange: [{ symbol: 'VE', from: 0.85, to: 1.05, kind: 'share' }],
    },
  };
}

/**
 * Fuel from logged injector duty.
 *
 *   m = i q rho sqrt(dp / dp_r) duty(n) (p_a + boost) / (p_a + boost when logged)
 *
 * Valid: duty well above the dead time of the injectors; fuel pressure that follows the manifold.
 */
function fromInjectors(
  setup: Setup,
  path: PullPath,
  ambientPressure: number,
  fuelDensity: number,
): FuelModel | null {
  const { injectors } = setup.engine;
  if (!injectors || injectors.duty.length < 2) return null;
  const duty = [...injectors.duty].sort((a, b) => a.engineSpeed_rpm - b.engineSpeed_rpm);
  const speeds = duty.map((p) => rpm(p.engineSpeed_rpm));
  const shares = duty.map((p) => p.duty_percent / 100);
  const driven = duty.map((p, i) =>
    p.boost_kPa === null
      ? interpolate(path.engineSpeed_rad_s, path.boost, speeds[i] ?? 0)
      : p.boost_kPa * 1e3,
  );
  const full =
    injectors.count *
    toSi(injectors.flow_mL_min, 'mL/min') *
    fuelDensity *
    Math.sqrt((injectors.fuelPressure_kPa ?? injectors.ratedPressure_kPa) / injectors.ratedPressure_kPa);
  return {
    basis: 'injectors',
    at: (n, boost) =>
      (full * interpolate(speeds, shares, n) * (ambientPressure + boost)) /
      (ambientPressure + interpolate(speeds, driven, n)),
    notes: [],
    explanation: {
      id: 'injection/fuel',
      formula: 'm = i q rho sqrt(dp/dp_r) duty',
      tex: String.raw`\dot m = i\,q\,\rho\sqrt{\Delta p/\Delta p_r}\;d`,
      inputs: [
        { symbol: 'i', value: injectors.count, kind: 'number' },
        { symbol: 'q', value: toSi(injectors.flow_mL_min, 'mL/min'), kind: 'volumeFlow' },
        { symbol: 'rho', value: fuelDensity, kind: 'density' },
        { symbol: 'duty', value: interpolate(speeds, shares, path.peakSpeed_rad_s), kind: 'share' },
      ],
      source: 'rated flow of the injectors and the orifice equation',
      validRange: [{ symbol: 'duty', from: 0.1, to: 0.95, kind: 'share' }],
    },
  };
}

/**
 * Fuel flow over engine speed and boost, from what the setup knows: logged injector duty before power and
 * consumption before displacement and efficiency, or the one that the user asks for.
 *
 * Errors: injection/fuel-flow-unknown where nothing, or not the one asked for, is known.
 * Check:  250 hp at 0.335 kg/kWh burn 1.04 kg/min.
 */
export function fuelModel(setup: Setup, path: PullPath, ambientPressure: number): Result<FuelModel> {
  const blend = petrolBlend(setup.engine.ethanol_percent / 100);
  if (!blend.ok) return blend;
  const fuelDensity = petrolDensity(blend.value, celsius(20));
  if (!fuelDensity.ok) return fuelDensity;
  const ways: Record<FuelBasis, () => FuelModel | null> = {
    injectors: () => fromInjectors(setup, path, ambientPressure, fuelDensity.value),
    power: () => fromPower(setup, path, ambientPressure),
    air: () => fromAir(setup, path, ambientPressure, blend.value.stoichiometricAirFuel),
  };
  const asked = setup.targets.fuelFrom;
  const order: readonly FuelBasis[] = asked === null ? ['injectors', 'power', 'air'] : [asked];
  for (const basis of order) {
    const model = ways[basis]();
    if (model) {
      const fuel = model.at(path.peakSpeed_rad_s, path.peakBoost);
      return ok({
        ...model,
        notes: [{ code: 'injection/fuel-from', facts: { basis, fuel } }, ...model.notes],
      });
    }
  }
  const field = asked === null ? 'engine.peakPower_kW' : 'targets.fuelFrom';
  return fail({ code: 'injection/fuel-flow-unknown', facts: { asked }, where: { field } });
}

/** Where on the pull a boost is met: its engine speed, or that of peak power from peak boost on. */
export function designSpeed(path: PullPath, boost: number): number {
  return boost >= path.peakBoost ? path.peakSpeed_rad_s : speedAtBoost(path, boost);
}
