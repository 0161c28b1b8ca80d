import { inputUncertainty, practice } from '../../core/power/index.ts';
import type { ShownKind } from '../../core/units/index.ts';
import type { ScreenWords } from '../../core/words/index.ts';

export type FieldPath = keyof ScreenWords['sheet']['fields'];
export type ChoicePath = keyof ScreenWords['sheet']['options'];

/** How a field is typed. `unit` is the one that the session keeps the number in. */
export type FieldSpec =
  | {
      readonly type: 'quantity';
      readonly path: FieldPath;
      readonly kind: ShownKind;
      readonly unit: string;
      readonly step?: number;
      /** A loss, a step or a pressure across a part: it counts from no zero. */
      readonly isDifference?: boolean;
      /** Lengths of parts stay in their own size of unit, whatever the road is measured in. */
      readonly shownIn?: { readonly metric: string; readonly imperial: string };
      /** Said in the empty field, as what holds then. */
      readonly fallback?: { readonly value: number; readonly unit: string };
      /** The session always holds a number here: emptied, it is the fallback again. */
      readonly isAlwaysSet?: boolean;
    }
  | { readonly type: 'choice'; readonly path: ChoicePath & FieldPath }
  | { readonly type: 'yes-no'; readonly path: FieldPath }
  | { readonly type: 'text'; readonly path: FieldPath }
  | { readonly type: 'list'; readonly path: FieldPath };

type Quantity = Extract<FieldSpec, { type: 'quantity' }>;

const quantity = (
  path: FieldPath,
  kind: ShownKind,
  unit: string,
  more: Partial<Pick<Quantity, 'step' | 'isDifference' | 'shownIn' | 'fallback' | 'isAlwaysSet'>> = {},
): FieldSpec => ({ type: 'quantity', path, kind, unit, ...more });
const count = (path: FieldPath, step = 1): FieldSpec => quantity(path, 'number', '', { step });
const percent = (path: FieldPath, step = 1, fallback?: number): FieldSpec =>
  quantity(path, 'share', '%', {
    step,
    ...(fallback === undefined ? {} : { fallback: { value: fallback, unit: '%' } }),
  });
/** As pumps are sold, whatever the spray is measured in. */
const pumpFlows = { metric: 'L/h', imperial: 'gal/h' };
/** A number that the session always holds; the default is practice. */
const standing = (
  path: FieldPath,
  kind: ShownKind,
  unit: string,
  value: number,
  more: Partial<Pick<Quantity, 'step' | 'isDifference' | 'shownIn'>> = {},
): FieldSpec => quantity(path, kind, unit, { ...more, fallback: { value, unit }, isAlwaysSet: true });
const standingPercent = (path: FieldPath, value: number, step = 1) =>
  standing(path, 'share', '%', value, { step });
const unitless = (value: number) => ({ value, unit: '1' });
const millimetres = { metric: 'mm', imperial: 'in' };

export type SectionId = keyof ScreenWords['setup']['sections'];
export type GroupId = keyof ScreenWords['setup']['groups'];
export type FieldGroup = { readonly group: GroupId | null; readonly fields: readonly FieldSpec[] };

/** Sections of the setup sheet in reading order; the defaults are common practice. */
export const sections: { readonly [S in Exclude<SectionId, 'fit'>]: readonly FieldGroup[] } = {
  targets: [
    {
      group: 'ratio',
      fields: [
        standingPercent('targets.fluidRatio_percent', 15),
        standingPercent('targets.ratioLow_percent', 10),
        standingPercent('targets.ratioHigh_percent', 25),
        standingPercent('targets.matchedStart_percent', 40),
      ],
    },
    {
      group: 'byHand',
      fields: [
        quantity('targets.start_kPa', 'boost', 'kPa', { step: 0.05 }),
        quantity('targets.full_kPa', 'boost', 'kPa', { step: 0.05 }),
        { type: 'choice', path: 'targets.strategy' },
      ],
    },
  ],
  car: [
    {
      group: 'body',
      fields: [
        { type: 'text', path: 'car.name' },
        quantity('car.mass_kg', 'mass', 'kg', { step: 10 }),
        quantity('car.massUncertainty_kg', 'mass', 'kg', { step: 5 }),
      ],
    },
    {
      group: 'drive',
      fields: [
        { type: 'list', path: 'car.gearRatios' },
        count('car.finalDrive', 0.01),
        count('car.pullGear'),
        { type: 'text', path: 'car.tyre' },
        quantity('car.rollingRadius_m', 'length', 'm', { shownIn: millimetres }),
        quantity('car.drivetrainEfficiency', 'share', '1', {
          step: 1,
          fallback: unitless(practice.drivetrainEfficiency),
        }),
      ],
    },
    {
      group: 'resistance',
      fields: [
        quantity('car.dragArea_m2', 'area', 'm2', {
          step: 0.01,
          fallback: { value: practice.dragArea, unit: 'm2' },
        }),
        quantity('car.rollingCoefficient', 'share', '1', {
          step: 0.1,
          fallback: unitless(practice.rollingCoefficient),
        }),
        quantity('car.tyreSlip', 'share', '1', { step: 0.1, fallback: unitless(practice.tyreSlip) }),
        quantity('car.wheelInertia_kg_m2', 'inertia', 'kg m2', { step: 0.1 }),
        quantity('car.engineInertia_kg_m2', 'inertia', 'kg m2', { step: 0.01 }),
        { type: 'choice', path: 'car.correction' },
      ],
    },
    {
      group: 'coastDown',
      fields: [
        quantity('car.roadLoad.a_N', 'force', 'N', { step: 1 }),
        quantity('car.roadLoad.b_N_s_m', 'forcePerSpeed', 'N s/m', { step: 0.1 }),
        quantity('car.roadLoad.c_N_s2_m2', 'forcePerSpeedSquared', 'N s2/m2', { step: 0.001 }),
        quantity('car.roadLoad.half_percent', 'share', '%', {
          step: 0.5,
          fallback: { value: 196 * inputUncertainty.roadLoadGiven, unit: '%' },
        }),
      ],
    },
  ],
  air: [
    {
      group: null,
      fields: [
        { type: 'choice', path: 'conditions.place' },
        quantity('conditions.ambient_C', 'temperature', 'C', { step: 1 }),
        quantity('conditions.barometer_kPa', 'pressure', 'kPa', { step: 0.1 }),
        percent('conditions.relativeHumidity_percent', 5, 100 * practice.relativeHumidity),
        percent('conditions.grade_percent', 0.1),
        quantity('conditions.rampInertiaWheel_kg_m2', 'inertia', 'kg m2', { step: 0.5 }),
        quantity('conditions.rampInertiaEngine_kg_m2', 'inertia', 'kg m2', { step: 0.01 }),
      ],
    },
  ],
  limits: [
    {
      group: null,
      fields: [
        standingPercent('limits.margin_percent', 1, 0.5),
        standing('limits.knockEvents', 'number', '', 1, { step: 1 }),
        standing('limits.leanestLambda', 'lambda', 'lambda', 0.9, { step: 0.01 }),
        standingPercent('limits.injectorDuty_percent', 85),
        quantity('limits.intake_C', 'temperature', 'C', { step: 1 }),
        quantity('limits.exhaust_C', 'temperature', 'C', { step: 10 }),
        quantity('limits.mapCeiling_kPa', 'pressure', 'kPa', { step: 5 }),
        quantity('limits.boostCeiling_kPa', 'boost', 'kPa', { step: 0.05 }),
        quantity('limits.fluidPressureLowest_kPa', 'fluidPressure', 'kPa', { step: 0.1 }),
      ],
    },
  ],
  engine: [
    {
      group: 'target',
      fields: [
        quantity('engine.peakPower_kW', 'power', 'kW', { step: 1 }),
        quantity('engine.peakPower_rpm', 'engineSpeed', 'rpm', { step: 100 }),
        quantity('engine.peakBoost_kPa', 'boost', 'kPa', { step: 0.05 }),
      ],
    },
    {
      group: 'engine',
      fields: [
        quantity('engine.displacement_L', 'volume', 'L', { step: 0.1 }),
        count('engine.cylinders'),
        count('engine.compressionRatio', 0.1),
        { type: 'choice', path: 'engine.compressor' },
        { type: 'yes-no', path: 'engine.hasCooler' },
        quantity('engine.mapSensor_kPa', 'pressure', 'kPa', { step: 5 }),
        quantity('engine.bore_mm', 'length', 'mm', { step: 0.1, shownIn: millimetres }),
        quantity('engine.stroke_mm', 'length', 'mm', { step: 0.1, shownIn: millimetres }),
        quantity('engine.rod_mm', 'length', 'mm', { step: 0.5, shownIn: millimetres }),
        quantity('engine.intakeClosing_deg', 'angle', 'deg', {
          step: 1,
          fallback: { value: 50, unit: 'deg' },
        }),
      ],
    },
    {
      group: 'pull',
      fields: [
        quantity('engine.pullFrom_rpm', 'engineSpeed', 'rpm', {
          step: 100,
          fallback: { value: 2500, unit: 'rpm' },
        }),
        quantity('engine.pullTo_rpm', 'engineSpeed', 'rpm', {
          step: 100,
          fallback: { value: 6500, unit: 'rpm' },
        }),
        quantity('engine.pullDuration_s', 'time', 's', { step: 0.5, fallback: { value: 8, unit: 's' } }),
        quantity('engine.boostRise_kPa_s', 'boost', 'kPa', { step: 0.1, isDifference: true }),
      ],
    },
    {
      group: 'charge',
      fields: [
        percent('engine.compressorEfficiency_percent', 1, 70),
        percent('engine.coolerEffectiveness_percent', 1, 70),
        quantity('engine.coolerLoss_kPa', 'fluidPressure', 'kPa', {
          isDifference: true,
          step: 0.01,
          fallback: { value: 6, unit: 'kPa' },
        }),
        quantity('engine.nozzleToValve_mm', 'length', 'mm', { step: 10, shownIn: millimetres }),
        quantity('engine.intakeBore_mm', 'length', 'mm', {
          step: 1,
          shownIn: millimetres,
          fallback: { value: 60, unit: 'mm' },
        }),
      ],
    },
    {
      group: 'fuel',
      fields: [
        { type: 'choice', path: 'targets.fuelFrom' },
        quantity('engine.fuelConsumption_kg_kWh', 'massPerEnergy', 'kg/kWh', {
          step: 0.005,
          fallback: { value: 0.335, unit: 'kg/kWh' },
        }),
        percent('engine.volumetricEfficiency_percent', 1, 95),
        quantity('engine.manifold_C', 'temperature', 'C', { step: 1, fallback: { value: 45, unit: 'C' } }),
        quantity('engine.lambda', 'lambda', 'lambda', {
          step: 0.01,
          fallback: { value: 0.82, unit: 'lambda' },
        }),
        standingPercent('engine.ethanol_percent', 0, 5),
        count('engine.octane_RON'),
        { type: 'choice', path: 'engine.fuelling' },
        quantity('engine.fuelPump_L_h', 'volumeFlow', 'L/h', { step: 5, shownIn: pumpFlows }),
      ],
    },
    {
      group: 'knock',
      fields: [
        quantity('engine.soundBoost_kPa', 'boost', 'kPa', { step: 0.05 }),
        quantity('engine.knockLimitedBoost_kPa', 'boost', 'kPa', { step: 0.05 }),
        quantity('engine.shownSpark_deg', 'angle', 'deg', {
          step: 0.5,
          fallback: { value: 14, unit: 'deg' },
        }),
      ],
    },
  ],
  fluid: [
    {
      group: 'mix',
      fields: [
        { type: 'choice', path: 'fluidSystem.mix.by' },
        percent('fluidSystem.mix.methanol_percent', 1),
        percent('fluidSystem.mix.ethanol_percent', 1),
        standing('fluidSystem.fluid_C', 'temperature', 'C', 20, { step: 1 }),
      ],
    },
    {
      group: 'spray',
      fields: [
        { type: 'choice', path: 'fluidSystem.place' },
        { type: 'choice', path: 'fluidSystem.metering' },
        { type: 'choice', path: 'fluidSystem.input' },
        quantity('fluidSystem.controller.step_kPa', 'boost', 'kPa', { step: 0.01, isDifference: true }),
        quantity('fluidSystem.controller.highestStart_kPa', 'boost', 'kPa', { step: 0.05 }),
        quantity('fluidSystem.controller.highestFull_kPa', 'boost', 'kPa', { step: 0.05 }),
        standingPercent('fluidSystem.controller.lowest_percent', 0, 5),
      ],
    },
    {
      group: 'pump',
      fields: [
        { type: 'choice', path: 'fluidSystem.pump.control' },
        quantity('fluidSystem.pump.setPressure_kPa', 'fluidPressure', 'kPa', { step: 0.1 }),
        quantity('fluidSystem.pump.shutPressure_kPa', 'fluidPressure', 'kPa', { step: 0.1 }),
        quantity('fluidSystem.pump.openFlow_mL_min', 'volumeFlow', 'mL/min', { step: 10 }),
        { type: 'choice', path: 'fluidSystem.pump.reference' },
      ],
    },
    {
      group: 'line',
      fields: [
        quantity('fluidSystem.checkValve_kPa', 'fluidPressure', 'kPa', { step: 0.1, isDifference: true }),
        quantity('fluidSystem.line.length_m', 'length', 'm', { step: 0.1 }),
        quantity('fluidSystem.line.bore_mm', 'length', 'mm', { step: 0.5, shownIn: millimetres }),
        quantity('fluidSystem.line.empty_m', 'length', 'm', { step: 0.1 }),
      ],
    },
    {
      group: 'tank',
      fields: [
        quantity('fluidSystem.tank_L', 'tankVolume', 'L', { step: 0.5 }),
        quantity('fluidSystem.reserve_L', 'tankVolume', 'L', { step: 0.1 }),
      ],
    },
    {
      group: 'spread',
      fields: [
        standingPercent('fluidSystem.spread.nozzle_percent', 5),
        standingPercent('fluidSystem.spread.pump_percent', 5),
        standingPercent('fluidSystem.spread.voltage_percent', 4),
        standingPercent('fluidSystem.spread.sensor_percent', 3),
      ],
    },
  ],
};

/** Parts that stand whole or not at all, and what they can't be without. */
export const optionalParts = {
  injectors: {
    path: 'engine.injectors',
    required: ['count', 'flow_mL_min'],
    fields: [
      count('engine.injectors.count'),
      quantity('engine.injectors.flow_mL_min', 'volumeFlow', 'mL/min', { step: 10 }),
      standing('engine.injectors.ratedPressure_kPa', 'fluidPressure', 'kPa', 300, {
        step: 0.1,
        isDifference: true,
      }),
      quantity('engine.injectors.fuelPressure_kPa', 'fluidPressure', 'kPa', {
        step: 0.1,
        isDifference: true,
      }),
    ],
  },
  logged: {
    path: 'fluidSystem.logged',
    required: ['fluid_mL', 'pulls'],
    fields: [
      quantity('fluidSystem.logged.fluid_mL', 'smallVolume', 'mL', { step: 1 }),
      count('fluidSystem.logged.pulls'),
    ],
  },
} as const satisfies Record<string, OptionalPart>;
export type OptionalPart = {
  readonly path: string;
  readonly required: readonly string[];
  readonly fields: readonly FieldSpec[];
};
/** How far one reading of the bucket test may be off. */
export const bucketUncertainty: readonly FieldSpec[] = [
  // As the bottles of the test are marked, under either system.
  standing('fluidSystem.bucket.volume_mL', 'smallVolume', 'mL', 5, {
    step: 1,
    shownIn: { metric: 'mL', imperial: 'mL' },
  }),
  standing('fluidSystem.bucket.mass_g', 'mass', 'g', 2, { step: 1, shownIn: { metric: 'g', imperial: 'g' } }),
  standing('fluidSystem.bucket.time_s', 'time', 's', 0.3, { step: 0.1 }),
];
