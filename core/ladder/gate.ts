import type { ShownKind } from '../units/index.ts';
import type { LadderLimits } from './limits.ts';
import type { Measured } from './measured.ts';

export const gateQuantities = [
  'knock',
  'lambda',
  'fluidPressure',
  'fluidFlow',
  'fuelPressure',
  'exhaust',
  'injectorDuty',
  'fuelPump',
  'mapSensor',
  'boostCeiling',
  'intake',
  'fluidLeft',
] as const;
export type GateQuantity = (typeof gateQuantities)[number];

/** What to do when a gate closes. */
export const gateActions = [
  'stop-then-half-step',
  'back-to-last-good',
  'stop-and-check-fuel',
  'stop-and-check-fluid',
  'hold-boost',
  'richer-or-less-spark',
  'cool-down',
  'refill',
] as const;
export type GateAction = (typeof gateActions)[number];

/** `unmeasured`: no channel tells, so a person has to look. */
export const gateStates = ['open', 'near', 'closed', 'unmeasured'] as const;
export type GateState = (typeof gateStates)[number];

/** One stop rule with its limit and what was measured. */
export type Gate = {
  readonly quantity: GateQuantity;
  /** What the numbers are shown as, SI. */
  readonly kind: ShownKind;
  readonly limit: number;
  /** Where closeness begins to count. */
  readonly from: number;
  /** Closes below its limit rather than above. */
  readonly isLowest: boolean;
  readonly measured: number | null;
  /** Before it is driven, low and high; null where nothing foretells it. */
  readonly predicted: readonly [number, number] | null;
  /** 0 far off, 1 at the limit, more past it; of what was measured, else of the worse end foretold. */
  readonly closeness: number | null;
  readonly state: GateState;
  readonly ifClosed: GateAction;
};

/** Near from here on (common practice: look twice in the last tenth). */
export const nearFrom = 0.9;
/** Fuel pressure that falls below this share of its start is a pump or filter at its end (common practice). */
const fuelPressureHolds = 0.95;
/** Fluid below this share of the planned flow is a clog or a weak pump (field practice over a tank). */
const flowHolds = 0.85;

/** Share of its delivery that a fuel pump is planned to: it ages, and the voltage sags (common practice). */
export const fuelPumpShare = 0.9;

type Rule = {
  readonly quantity: GateQuantity;
  readonly kind: ShownKind;
  readonly limit: number | null;
  /** Where closeness is nothing. */
  readonly from: number;
  readonly isLowest?: boolean;
  readonly measured: number | null;
  readonly predicted?: readonly [number, number] | null;
  readonly ifClosed: GateAction;
};

function closenessOf(rule: Rule, value: number, limit: number): number {
  if (rule.isLowest && rule.from > limit) return Math.max(0, (rule.from - value) / (rule.from - limit));
  if (rule.isLowest) return value > 0 ? limit / value : Number.POSITIVE_INFINITY;
  if (limit <= rule.from) return value >= limit ? 1 : 0;
  return Math.max(0, (value - rule.from) / (limit - rule.from));
}

function gateOf(rule: Rule): Gate[] {
  const { limit, measured } = rule;
  if (limit === null) return [];
  const predicted = rule.predicted ?? null;
  const worse = predicted === null ? null : rule.isLowest ? predicted[0] : predicted[1];
  const told = measured ?? worse;
  const closeness = told === null ? null : closenessOf(rule, told, limit);
  const isClosed = measured !== null && (rule.isLowest ? measured < limit : measured >= limit);
  const state: GateState =
    measured === null
      ? closeness !== null && closeness >= nearFrom
        ? 'near'
        : 'unmeasured'
      : isClosed
        ? 'closed'
        : (closeness ?? 0) >= nearFrom
          ? 'near'
          : 'open';
  return [
    {
      quantity: rule.quantity,
      kind: rule.kind,
      limit,
      from: rule.from,
      isLowest: rule.isLowest ?? false,
      measured,
      predicted,
      closeness,
      state,
      ifClosed: rule.ifClosed,
    },
  ];
}

/** What foretells gates that no pull has measured yet. */
export type Foretold = {
  readonly intake: readonly [number, number] | null;
  readonly injectorDuty: readonly [number, number] | null;
  /** Fuel needed over what the pump delivers. */
  readonly fuelPump: readonly [number, number] | null;
  readonly manifoldPressure: readonly [number, number] | null;
  readonly fluidFlow: readonly [number, number] | null;
};
export const nothingForetold: Foretold = {
  intake: null,
  injectorDuty: null,
  fuelPump: null,
  manifoldPressure: null,
  fluidFlow: null,
};

export type GateContext = {
  readonly limits: LadderLimits;
  readonly ambientTemperature: number;
  readonly ambientPressure: number;
  /** Full scale, absolute [Pa]; null where unknown. */
  readonly mapSensor: number | null;
  /** Petrol that the pump delivers at the pressure of full boost [kg/s]; null where unknown. */
  readonly fuelPump: number | null;
  readonly isSprayOn: boolean;
  /** At peak boost [m^3/s]; null without a plan. */
  readonly plannedFlow: number | null;
  /** Reserve over the tank; null where one is unknown. */
  readonly reserveShare: number | null;
};

/** Keep this far below the end of a manifold pressure sensor: it reads flat there (field practice). */
export const mapMargin = 0.95;

/**
 * The stop rules of one entry or step: what they are set to, what was measured, how close it came.
 *
 * @param measured  of the entry's pulls; nothingMeasured for a step to come
 *
 * Knock: one event stops, two send back a step. A gate with neither limit nor channel is left out, one with a limit
 * and no channel stays as `unmeasured`: unseen is not passed.
 */
export function gatesOf(
  measured: Measured,
  context: GateContext,
  foretold: Foretold = nothingForetold,
): readonly Gate[] {
  const { limits } = context;
  const mapEnd = context.mapSensor === null ? null : mapMargin * context.mapSensor;
  const mapLimit =
    mapEnd === null
      ? limits.mapCeiling
      : limits.mapCeiling === null
        ? mapEnd
        : Math.min(mapEnd, limits.mapCeiling);
  const knocks = measured.knockEvents;
  const boostForetold = foretold.manifoldPressure;
  const rules: Rule[] = [
    {
      quantity: 'knock',
      kind: 'number',
      limit: Math.max(1, limits.knockEvents),
      from: 0,
      measured: knocks,
      ifClosed: knocks !== null && knocks >= 2 ? 'back-to-last-good' : 'stop-then-half-step',
    },
    {
      quantity: 'lambda',
      kind: 'lambda',
      limit: limits.leanestLambda,
      // Richer than 0.75 costs power and washes walls: nobody is there for safety (field practice).
      from: 0.75,
      measured: measured.leanestLambda,
      ifClosed: 'stop-and-check-fuel',
    },
    ...(context.isSprayOn
      ? ([
          {
            quantity: 'fluidPressure',
            kind: 'fluidPressure',
            limit: limits.fluidPressureLowest,
            from: 0,
            isLowest: true,
            measured: measured.lowestFluidPressure,
            ifClosed: 'stop-and-check-fluid',
          },
          {
            quantity: 'fluidFlow',
            kind: 'volumeFlow',
            limit: context.plannedFlow === null ? null : flowHolds * context.plannedFlow,
            from: 0,
            isLowest: true,
            measured: measured.fluidFlow,
            predicted: foretold.fluidFlow,
            ifClosed: 'stop-and-check-fluid',
          },
          {
            quantity: 'fluidLeft',
            kind: 'share',
            limit: context.reserveShare,
            from: 0,
            isLowest: true,
            measured: measured.fluidLevel,
            ifClosed: 'refill',
          },
        ] satisfies Rule[])
      : []),
    {
      quantity: 'fuelPressure',
      kind: 'share',
      limit: fuelPressureHolds,
      // Pressure that holds its start is as far from the gate as it can be.
      from: 1,
      isLowest: true,
      measured: measured.fuelPressureHeld,
      ifClosed: 'stop-and-check-fuel',
    },
    {
      quantity: 'exhaust',
      kind: 'temperature',
      limit: limits.exhaust,
      // Full load is never below this (from memory): closeness counts from there.
      from: 873.15,
      measured: measured.hottestExhaust,
      ifClosed: 'richer-or-less-spark',
    },
    {
      quantity: 'injectorDuty',
      kind: 'share',
      limit: limits.injectorDuty,
      from: 0,
      measured: measured.injectorDuty,
      predicted: foretold.injectorDuty,
      // Planned to the limit; this far past it the next moment is static, and lean (field practice: 85 and 90 %).
      ifClosed:
        (measured.injectorDuty ?? 0) >= limits.injectorDuty + 0.05 ? 'back-to-last-good' : 'hold-boost',
    },
    {
      quantity: 'fuelPump',
      kind: 'share',
      limit: context.fuelPump === null ? null : fuelPumpShare,
      from: 0,
      measured:
        context.fuelPump === null || measured.fuelFlow === null ? null : measured.fuelFlow / context.fuelPump,
      predicted: foretold.fuelPump,
      ifClosed: 'hold-boost',
    },
    {
      quantity: 'mapSensor',
      kind: 'pressure',
      limit: mapLimit,
      from: 0,
      measured: measured.manifoldPressure,
      predicted: boostForetold,
      ifClosed: 'hold-boost',
    },
    {
      quantity: 'boostCeiling',
      kind: 'boost',
      limit: limits.boostCeiling,
      from: 0,
      measured:
        measured.boost ??
        (measured.manifoldPressure === null ? null : measured.manifoldPressure - context.ambientPressure),
      predicted: boostForetold && [
        boostForetold[0] - context.ambientPressure,
        boostForetold[1] - context.ambientPressure,
      ],
      ifClosed: 'hold-boost',
    },
    {
      quantity: 'intake',
      kind: 'temperature',
      limit: limits.intake,
      from: context.ambientTemperature,
      measured: measured.hottestIntake,
      predicted: foretold.intake,
      ifClosed: 'cool-down',
    },
  ];
  return rules.flatMap(gateOf);
}

/** Closed gates, gravest first. */
export function closedGates(gates: readonly Gate[]): readonly Gate[] {
  return gates
    .filter((g) => g.state === 'closed')
    .sort((a, b) => gateQuantities.indexOf(a.quantity) - gateQuantities.indexOf(b.quantity));
}
