import type { SetupInput } from '../../core/session/index.ts';
import { air } from './day.ts';
import { nominal } from './facts.ts';
import { engine, spray } from './hatch.ts';
import { story } from './story.ts';
import { curveOf, grid_rpm } from './truth.ts';
import { baseTune, sparkAt } from './tune.ts';

const mL_min = (m3_s: number) => Math.round(m3_s * 6e7);

/** Full-throttle curves of the last kept entry in steps of 500 rpm and at the end, rounded as read off a screen. */
function curvesAsRead() {
  const tune = story.find((chapter) => chapter.id === 'mixture')?.tune;
  if (!tune) throw new Error('the story has no mixture step');
  const { trace } = nominal(tune);
  const pressure = curveOf(trace, 0, 'manifoldPressure');
  const power = curveOf(trace, 0, 'enginePower');
  const duty = curveOf(trace, 0, 'injectorDuty');
  return grid_rpm.flatMap((engineSpeed_rpm, i) => {
    const [p, w, d] = [pressure[i] ?? null, power[i] ?? null, duty[i] ?? null];
    const isRead = engineSpeed_rpm % 500 === 0 || engineSpeed_rpm === grid_rpm.at(-1);
    if (!isRead || p === null || w === null || d === null) return [];
    return {
      engineSpeed_rpm,
      boost_kPa: Math.round((p - air.pressure) / 1e3),
      power_kW: Math.round(w / 1e3),
      duty_percent: Math.round(d * 100),
    };
  });
}

/** What the tuner of the story has looked at: two points still open, one to mend. */
const fitAnswers: NonNullable<SetupInput['fit']> = {
  'before-the-throttle': 'yes',
  'away-from-blow-off': 'no',
  'no-siphon': 'yes',
  'no-vacuum-draw': 'yes',
  'check-valve': 'yes',
  'pump-below-tank': 'yes',
  'tank-away-from-heat': 'yes',
  'filter-before-nozzle': 'yes',
  'hoses-pressure-tested': 'yes',
  'fuse-and-relay': 'yes',
  'ignition-only': 'yes',
  'primed-and-measured': 'yes',
  'low-level-warning': 'yes',
  'fail-safe-wired': 'yes',
  materials: 'yes',
  'out-of-the-cabin': 'yes',
  'gloves-and-goggles': 'yes',
  'clean-water': 'yes',
  'boost-leak-test': 'yes',
  'sensors-plausible': 'yes',
};

/** The setup sheet as a tuner would fill it in for the Fenmoor hatch, pump and nozzle with their bucket test. */
export function setupAsTyped(): SetupInput {
  const curves = curvesAsRead();
  // The invented engine is measured by mass; a data sheet gives volume of petrol at 0.745 kg/L.
  const injectorFlow_mL_min = Math.round((engine.injectorStatic * 60_000) / 4 / 0.745);
  const outdoors = spray.pumpPressure - 0.6e5 - spray.checkValve;
  const full = spray.nozzleFlow * Math.sqrt((outdoors / spray.nozzleRatedDifference) * (998 / spray.density));
  return {
    engine: {
      displacement_L: engine.displacement * 1000,
      cylinders: 4,
      bore_mm: 83,
      stroke_mm: 92.4,
      rod_mm: 145,
      compressionRatio: 9.8,
      intakeClosing_deg: 50,
      compressor: 'turbo',
      compressorEfficiency_percent: 70,
      hasCooler: true,
      coolerEffectiveness_percent: 78,
      coolerLoss_kPa: 8,
      nozzleToValve_mm: 650,
      intakeBore_mm: 60,
      peakPower_kW: Math.max(...curves.map((c) => c.power_kW)),
      peakPower_rpm: 6400,
      peakBoost_kPa: 110,
      boostCurve: curves.map(({ engineSpeed_rpm, boost_kPa }) => ({ engineSpeed_rpm, boost_kPa })),
      powerCurve: curves.map(({ engineSpeed_rpm, power_kW }) => ({ engineSpeed_rpm, power_kW })),
      pullFrom_rpm: 2450,
      pullTo_rpm: 6450,
      pullDuration_s: 7.6,
      boostRise_kPa_s: 90,
      lambda: 0.82,
      octane_RON: 98,
      fuelling: 'closed-loop',
      injectors: {
        count: 4,
        flow_mL_min: injectorFlow_mL_min,
        ratedPressure_kPa: 300,
        duty: curves.map(({ engineSpeed_rpm, duty_percent, boost_kPa }) => ({
          engineSpeed_rpm,
          duty_percent,
          boost_kPa,
        })),
      },
      mapSensor_kPa: 300,
      soundBoost_kPa: 100,
      // As the control shows it in the middle of the baseline's pulls, to half a degree.
      shownSpark_deg: Math.round(2 * sparkAt(baseTune, 4500, 100e3)) / 2,
      fuelPump_L_h: 140,
    },
    fluidSystem: {
      mix: { by: 'poured', methanol_percent: 50, ethanol_percent: 0 },
      fluid_C: 15,
      nozzles: [
        { name: 'N140', flow_mL_min: mL_min(spray.nozzleFlow), ratedPressure_kPa: 700, count: 1 },
        { name: 'N100', flow_mL_min: 100, ratedPressure_kPa: 700, count: 1 },
        { name: 'N180', flow_mL_min: 180, ratedPressure_kPa: 700, count: 1 },
        { name: 'N220', flow_mL_min: 220, ratedPressure_kPa: 700, count: 1 },
      ],
      fitted: ['N140'],
      place: 'after-cooler',
      pump: { control: 'regulated', setPressure_kPa: 900, reference: 'ambient' },
      checkValve_kPa: spray.checkValve / 1000,
      line: { length_m: 2.2, bore_mm: 4, empty_m: 0 },
      metering: 'valve-duty',
      input: 'boost',
      tank_L: 4,
      reserve_L: 0.8,
      bucket: {
        points: [
          { setting_percent: 100, time_s: 60, volume_mL: mL_min(full) },
          { setting_percent: 50, time_s: 60, volume_mL: mL_min(full / 2) + 1 },
        ],
      },
    },
    targets: {
      fluidRatio_percent: 15,
      start_kPa: spray.startBoost / 1000,
      full_kPa: spray.fullBoost / 1000,
      strategy: 'by-hand',
      fuelFrom: 'power',
    },
    fit: fitAnswers,
    air: { ambient_C: 12, barometer_kPa: air.pressure / 1000 },
  };
}
