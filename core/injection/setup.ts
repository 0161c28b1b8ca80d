import { z } from 'zod';
import { AnswersSchema } from '../fit/index.ts';
import { mixBases } from '../fluids/index.ts';

const positive = z.number().positive();
const percent = z.number().min(0).max(100);
const optional = <T extends z.ZodType>(schema: T) => schema.nullable().default(null);

/** Where a nozzle sprays, along the air's way. */
export const places = ['before-compressor', 'before-cooler', 'after-cooler', 'manifold', 'port'] as const;
export type Place = (typeof places)[number];

const BoostAtSpeedSchema = z.looseObject({
  engineSpeed_rpm: positive.max(20_000),
  boost_kPa: z.number().min(-100).max(600),
});

/**
 * The engine as far as fluid, charge and ladder need it. Null is unknown: what rests on a default of practice
 * says so. Boost is gauge, against the air of the day.
 */
export const EngineSchema = z.looseObject({
  displacement_L: optional(positive.max(20)),
  cylinders: optional(z.int().min(1).max(16)),
  bore_mm: optional(positive.max(200)),
  stroke_mm: optional(positive.max(200)),
  rod_mm: optional(positive.max(400)),
  compressionRatio: optional(positive.min(5).max(20)),
  /** Closing of the inlet valve after bottom dead centre. */
  intakeClosing_deg: optional(z.number().min(0).max(120)),
  compressor: optional(z.enum(['turbo', 'centrifugal', 'roots', 'screw'])),
  compressorEfficiency_percent: optional(percent),
  hasCooler: optional(z.boolean()),
  coolerEffectiveness_percent: optional(percent),
  coolerLoss_kPa: optional(z.number().min(0).max(100)),
  /** Way and bore from the nozzle to the inlet valve: what a drop has to evaporate in. */
  nozzleToValve_mm: optional(positive.max(5000)),
  intakeBore_mm: optional(positive.max(300)),
  /** Crank power of the target, at `peakPower_rpm` and `peakBoost_kPa`. */
  peakPower_kW: optional(positive.max(3000)),
  peakPower_rpm: optional(positive.max(20_000)),
  peakBoost_kPa: optional(positive.max(600)),
  /** Boost over engine speed in a full-throttle pull, rising speed. */
  boostCurve: z.array(BoostAtSpeedSchema).max(200).default([]),
  /** Crank power over engine speed in a full-throttle pull. */
  powerCurve: z
    .array(z.looseObject({ engineSpeed_rpm: positive.max(20_000), power_kW: z.number().min(0).max(3000) }))
    .max(200)
    .default([]),
  pullFrom_rpm: optional(positive.max(20_000)),
  pullTo_rpm: optional(positive.max(20_000)),
  pullDuration_s: optional(positive.max(120)),
  boostRise_kPa_s: optional(positive.max(2000)),
  fuelConsumption_kg_kWh: optional(positive.min(0.1).max(1)),
  volumetricEfficiency_percent: optional(positive.max(200)),
  manifold_C: optional(z.number().min(-40).max(200)),
  lambda: optional(z.number().min(0.5).max(1.5)),
  /** In the petrol, by volume. */
  ethanol_percent: percent.default(0),
  octane_RON: optional(z.number().min(80).max(130)),
  fuelling: optional(z.enum(['closed-loop', 'open-loop', 'mass-air'])),
  injectors: optional(
    z.looseObject({
      count: z.int().min(1).max(32),
      /** Each, petrol, static, at `ratedPressure_kPa` across it. */
      flow_mL_min: positive.max(10_000),
      ratedPressure_kPa: positive.max(30_000).default(300),
      /** Fuel pressure over manifold pressure; null where it is the rated one. */
      fuelPressure_kPa: optional(positive.max(30_000)),
      /** Logged at full throttle, rising speed. */
      duty: z
        .array(
          z.looseObject({
            engineSpeed_rpm: positive.max(20_000),
            duty_percent: percent,
            boost_kPa: optional(z.number()),
          }),
        )
        .max(500)
        .default([]),
    }),
  ),
  /** Full scale of the manifold pressure sensor, absolute. */
  mapSensor_kPa: optional(positive.max(1000)),
  /** Highest boost this engine has shown knock-free without spray, and the lowest at which it knocked. */
  soundBoost_kPa: optional(z.number().min(0).max(600)),
  knockLimitedBoost_kPa: optional(positive.max(600)),
  /** Spark before top dead centre at that boost. */
  shownSpark_deg: optional(z.number().min(-20).max(60)),
  /** What the fuel pump delivers at the fuel pressure of full boost and the voltage of the car. */
  fuelPump_L_h: optional(positive.max(5000)),
});
export type Engine = z.infer<typeof EngineSchema>;

export const NozzleSchema = z.looseObject({
  name: z.string().min(1).max(80),
  /** Below zero is kept as typed and refused by the plan, in words. */
  flow_mL_min: z.number().max(10_000),
  /** Pressure difference across it at the rating. */
  ratedPressure_kPa: positive.max(5000).default(700),
  /** Fluid it was rated with: water unless told. */
  ratedDensity_kg_m3: positive.min(600).max(1300).default(998.2),
  /** How many of it may be fitted; null for any number. */
  count: optional(z.int().min(0).max(8)),
  /** Where this one sprays, if not where the others do. */
  place: optional(z.enum(places)),
});

export const PumpSchema = z.looseObject({
  /** Measured or from the data sheet, any order; beats the two-number line. */
  points: z
    .array(
      z.looseObject({
        pressure_kPa: z.number().min(0).max(5000),
        flow_mL_min: z.number().max(20_000),
      }),
    )
    .max(50)
    .default([]),
  /** Two-number line: gauge pressure with the outlet shut, flow with it open. */
  shutPressure_kPa: optional(positive.max(5000)),
  openFlow_mL_min: optional(z.number().max(20_000)),
  /** `bypass`: a spring lets fluid back above the set pressure; `regulated`: a regulator or switch holds it. */
  control: z.enum(['none', 'bypass', 'regulated']).default('none'),
  setPressure_kPa: optional(positive.max(5000)),
  /** What the set pressure is held against. */
  reference: z.enum(['ambient', 'manifold']).default('ambient'),
});

export const LineSchema = z.looseObject({
  length_m: optional(positive.max(30)),
  bore_mm: optional(positive.max(30)),
  /** The part that stands empty until the spray starts: from valve or pump to the check valve or nozzle. */
  empty_m: optional(z.number().min(0).max(30)),
});

export const BucketPointSchema = z.looseObject({
  setting_percent: percent,
  time_s: positive.max(3600),
  volume_mL: optional(positive.max(100_000)),
  mass_g: optional(positive.max(100_000)),
});

export const FluidSystemSchema = z.looseObject({
  /** Null while unknown: half and half methanol is then taken, and said. */
  mix: optional(
    z.looseObject({
      by: z.enum(mixBases).default('poured'),
      methanol_percent: z.number().default(0),
      ethanol_percent: z.number().default(0),
    }),
  ),
  fluid_C: z.number().min(-40).max(80).default(20),
  nozzles: z.array(NozzleSchema).max(12).default([]),
  /** Fitted now, by name; empty where none is. */
  fitted: z.array(z.string().max(80)).max(6).default([]),
  place: optional(z.enum(places)),
  pump: PumpSchema.default(PumpSchema.parse({})),
  /** Cracking pressure of the check valve at the nozzle; null where there is none. */
  checkValve_kPa: optional(z.number().min(0).max(1000)),
  line: LineSchema.default(LineSchema.parse({})),
  metering: z.enum(['on-off', 'pump-speed', 'valve-duty']).default('pump-speed'),
  input: z.enum(['boost', 'injector-duty', 'mass-air']).default('boost'),
  controller: z
    .looseObject({
      /** Smallest change its display takes. */
      step_kPa: optional(positive.max(100)),
      highestStart_kPa: optional(positive.max(600)),
      highestFull_kPa: optional(positive.max(1000)),
      /** Output at the start point. */
      lowest_percent: z.number().min(0).max(90).default(0),
    })
    .default({ step_kPa: null, highestStart_kPa: null, highestFull_kPa: null, lowest_percent: 0 }),
  tank_L: optional(positive.max(200)),
  /** Left when the low-level warning comes on. */
  reserve_L: optional(z.number().min(0).max(200)),
  bucket: z
    .looseObject({
      points: z.array(BucketPointSchema).max(40).default([]),
      /** Half of the 95 % interval of one reading. */
      volume_mL: positive.max(1000).default(5),
      mass_g: positive.max(1000).default(2),
      time_s: positive.max(10).default(0.3),
    })
    .default({ points: [], volume_mL: 5, mass_g: 2, time_s: 0.3 }),
  /** Half widths of what is still normal. */
  spread: z
    .looseObject({
      nozzle_percent: percent.default(5),
      pump_percent: percent.default(5),
      voltage_percent: percent.default(4),
      sensor_percent: percent.default(3),
    })
    .default({ nozzle_percent: 5, pump_percent: 5, voltage_percent: 4, sensor_percent: 3 }),
  /** Refills as noted: what went in, and the pulls since the last one. */
  refills: z
    .array(
      z.looseObject({
        filled_L: positive.max(200),
        pulls: z.int().min(0),
        note: z.string().max(500).default(''),
      }),
    )
    .max(500)
    .default([]),
  /** Fluid per pull as a log with a flow channel gave it, with the number of pulls. */
  logged: optional(z.looseObject({ fluid_mL: positive.max(10_000), pulls: z.int().min(1) })),
});
export type FluidSystem = z.infer<typeof FluidSystemSchema>;

export const TargetsSchema = z.looseObject({
  /** Fluid over fuel by mass at peak boost; 15 is practice. */
  fluidRatio_percent: positive.max(60).default(15),
  /** Window of practice that a warning goes by. */
  ratioLow_percent: percent.default(10),
  ratioHigh_percent: percent.default(25),
  /** Ratio over boost; empty for the profile of practice: nothing up to 40 % of peak, then rising to the target. */
  ratioProfile: z
    .array(z.looseObject({ boost_kPa: z.number().min(0).max(600), ratio_percent: z.number().min(0).max(60) }))
    .max(50)
    .default([]),
  /** Share of peak boost at which a matched nozzle starts: 40 is practice. */
  matchedStart_percent: z.number().min(5).max(95).default(40),
  /** By hand; null where the user has not set them. */
  start_kPa: optional(z.number().max(600)),
  full_kPa: optional(z.number().max(1000)),
  /** The strategy that the user drives; null for the recommended one. */
  strategy: optional(z.enum(['later-start', 'full-beyond', 'by-hand'])),
  fuelFrom: optional(z.enum(['power', 'air', 'injectors'])),
});
export type Targets = z.infer<typeof TargetsSchema>;

/** Air of the day; null is unknown, and the standard atmosphere is then used and said. */
export const SetupAirSchema = z.looseObject({
  ambient_C: optional(z.number().min(-60).max(70)),
  barometer_kPa: optional(z.number().min(40).max(115)),
});

/** SETUP.json, and `setup` of a session: engine, fluid system, targets, answers of the fit review. */
export const SetupSchema = z.looseObject({
  engine: EngineSchema.default(EngineSchema.parse({})),
  fluidSystem: FluidSystemSchema.default(FluidSystemSchema.parse({})),
  targets: TargetsSchema.default(TargetsSchema.parse({})),
  air: SetupAirSchema.default(SetupAirSchema.parse({})),
  fit: AnswersSchema.default({}),
});
export type Setup = z.infer<typeof SetupSchema>;
/** What may be typed: everything with a default may be missing. */
export type SetupInput = z.input<typeof SetupSchema>;

/** A setup with nothing known. */
export const emptySetup: Setup = SetupSchema.parse({});
