/** Everything that is true of the car at one instant, SI unless the name says otherwise. */
export const traceFields = [
  'time',
  'engineSpeed_rpm',
  'speed',
  'acceleration',
  'pedal',
  'throttle',
  'manifoldPressure',
  'boostTarget',
  'sparkAdvance_deg',
  'knockRetard_deg',
  'lambda',
  'lambdaTarget',
  'intakeTemperature',
  'coolantTemperature',
  'exhaustTemperature',
  'airFlow',
  'fuelFlow',
  'injectorDuty',
  'fuelPressure',
  'fuelTrim',
  'fluidFlow',
  'fluidPressure',
  'batteryVoltage',
  'wheelPower',
  'enginePower',
] as const;
export type TraceField = (typeof traceFields)[number];

/** One drive in steps of a millisecond, one array per field; `pulls` are index ranges at full throttle. */
export type Trace = {
  readonly fields: Readonly<Record<TraceField, Float64Array>>;
  readonly length: number;
  /** Half open: first step at full pedal and throttle, first step of the lift. */
  readonly pulls: readonly { readonly from: number; readonly to: number }[];
};

export type Instant = Record<TraceField, number>;

/** Collects instants and hands out the arrays. */
export function traceBuilder(): {
  add: (instant: Instant) => number;
  build: (pulls: Trace['pulls']) => Trace;
} {
  const rows = Object.fromEntries(traceFields.map((f) => [f, [] as number[]])) as Record<
    TraceField,
    number[]
  >;
  let length = 0;
  return {
    add(instant) {
      for (const f of traceFields) rows[f].push(instant[f]);
      return length++;
    },
    build: (pulls) => ({
      fields: Object.fromEntries(traceFields.map((f) => [f, Float64Array.from(rows[f])])) as Trace['fields'],
      length,
      pulls,
    }),
  };
}
