import { type ChargeDefault, type ChargePath, type KnockEngine, sprayPlaces } from '../charge/index.ts';
import { petrolBlend } from '../fluids/index.ts';
import { deliveredAt, type Plan, type Setup } from '../injection/index.ts';
import { type Note, ok, type Result } from '../result/index.ts';
import { celsius, degrees } from '../units/index.ts';

/** The air that is asked about; the setup's own where null. */
export type Today = {
  readonly ambient_C: number | null;
  readonly barometer_kPa: number | null;
  readonly relativeHumidity_percent: number | null;
};
export const sameDay: Today = { ambient_C: null, barometer_kPa: null, relativeHumidity_percent: null };

/** Where heat and knock sums take what the setup leaves open (common practice). */
const practice = {
  compressorEfficiency: { turbo: 0.7, centrifugal: 0.7, screw: 0.65, roots: 0.55 },
  coolerEffectiveness: 0.7,
  /** [Pa] */
  coolerLoss: 6e3,
  ambientTemperature: celsius(20),
  barometer: 101.325e3,
  relativeHumidity: 0.5,
  lambda: 0.82,
  octane: 95,
  compressionRatio: 9.5,
  rodRatio: 3.2,
  intakeBore_mm: 60,
  intakeClosing: degrees(50),
  spark: degrees(14),
} as const;

/** The setup as charge and knock need it: SI, every default named in `notes`. */
export type ChargeModel = {
  /** [Pa] */
  readonly ambientPressure: number;
  /** [K] */
  readonly ambientTemperature: number;
  readonly lambda: number;
  /** Stoichiometric, by mass. */
  readonly petrolAirFuel: number;
  readonly engine: KnockEngine;
  /** Spark at the shown point, before top dead centre [rad]. */
  readonly spark_rad: number;
  /** The way of the charge at boost [Pa gauge] and engine speed, spray on or off. */
  readonly path: (boost: number, engineSpeed_rad_s: number, isSprayOn: boolean) => ChargePath;
  /** Dry air [kg/s]. */
  readonly airFlow: (boost: number, engineSpeed_rad_s: number) => number;
  /** Fluid [m^3/s] as the driven strategy sends it. */
  readonly fluidFlow: (boost: number, engineSpeed_rad_s: number) => number;
  readonly notes: readonly Note[];
};

/**
 * Charge and knock of this setup on a day.
 *
 * @param plan  of the same setup: fuel and fluid come from it
 *
 * Errors: those of petrolBlend.
 */
export function chargeModel(setup: Setup, plan: Plan, today: Today = sameDay): Result<ChargeModel> {
  const { engine, fluidSystem, air } = setup;
  const notes: Note[] = [];
  const or = (value: number | null, what: ChargeDefault, usual: number): number => {
    if (value !== null) return value;
    notes.push({ code: 'charge/practice-default', facts: { what, value: usual } });
    return usual;
  };
  const blend = petrolBlend(engine.ethanol_percent / 100);
  if (!blend.ok) return blend;
  const day_C = today.ambient_C ?? air.ambient_C;
  const day_kPa = today.barometer_kPa ?? air.barometer_kPa;
  const ambientTemperature = or(
    day_C === null ? null : celsius(day_C),
    'ambientTemperature',
    practice.ambientTemperature,
  );
  const ambientPressure = or(day_kPa === null ? null : day_kPa * 1e3, 'barometer', practice.barometer);
  const relativeHumidity = or(
    today.relativeHumidity_percent === null ? null : today.relativeHumidity_percent / 100,
    'relativeHumidity',
    practice.relativeHumidity,
  );
  const lambda = or(engine.lambda, 'lambda', practice.lambda);
  const efficiency = or(
    engine.compressorEfficiency_percent === null ? null : engine.compressorEfficiency_percent / 100,
    'compressorEfficiency',
    practice.compressorEfficiency[engine.compressor ?? 'turbo'],
  );
  const cooler =
    engine.hasCooler === false
      ? null
      : {
          effectiveness: or(
            engine.coolerEffectiveness_percent === null ? null : engine.coolerEffectiveness_percent / 100,
            'coolerEffectiveness',
            practice.coolerEffectiveness,
          ),
          coolant: null,
          loss: or(
            engine.coolerLoss_kPa === null ? null : engine.coolerLoss_kPa * 1e3,
            'coolerLoss',
            practice.coolerLoss,
          ),
        };
  const rodRatio =
    engine.rod_mm === null || engine.stroke_mm === null ? null : engine.rod_mm / (engine.stroke_mm / 2);
  const knock: KnockEngine = {
    crank: {
      compressionRatio: or(engine.compressionRatio, 'compressionRatio', practice.compressionRatio),
      rodToCrank: or(rodRatio, 'rodRatio', practice.rodRatio),
    },
    intakeClosing_rad: or(
      engine.intakeClosing_deg === null ? null : degrees(engine.intakeClosing_deg),
      'intakeClosing',
      practice.intakeClosing,
    ),
    octane: or(engine.octane_RON, 'octane', practice.octane),
    lambda,
  };
  const airFlow = (boost: number, n: number) =>
    plan.fuel.at(n, boost) * lambda * blend.value.stoichiometricAirFuel;
  const fluidFlow = (boost: number, n: number) => deliveredAt(plan.context, plan.driven, n, boost);
  const place = sprayPlaces.find((p) => p === fluidSystem.place) ?? (cooler ? 'after-cooler' : 'manifold');
  const path = (boost: number, n: number, isSprayOn: boolean): ChargePath => {
    const flow = airFlow(boost, n);
    return {
      ambient: { pressure: ambientPressure, temperature: ambientTemperature, relativeHumidity },
      manifoldPressure: ambientPressure + boost,
      compressor: boost > 0 ? { efficiency } : null,
      cooler,
      spray: isSprayOn
        ? {
            mix: plan.system.mix,
            fluidOverAir: (fluidFlow(boost, n) * plan.system.density) / flow,
            temperature: celsius(fluidSystem.fluid_C),
            place,
            dropDiameter: null,
            way:
              engine.nozzleToValve_mm === null
                ? null
                : {
                    length: engine.nozzleToValve_mm / 1e3,
                    bore: (engine.intakeBore_mm ?? practice.intakeBore_mm) / 1e3,
                  },
          }
        : null,
      airFlow: flow,
    };
  };
  return ok({
    ambientPressure,
    ambientTemperature,
    lambda,
    petrolAirFuel: blend.value.stoichiometricAirFuel,
    engine: knock,
    spark_rad: or(
      engine.shownSpark_deg === null ? null : degrees(engine.shownSpark_deg),
      'spark',
      practice.spark,
    ),
    path,
    airFlow,
    fluidFlow,
    notes,
  });
}
