import type { ShownKind } from '../units/index.ts';

/** What a gate watches, the gravest first. */
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

/** A stop rule before it is held against anything; without a limit it closes no gate. */
export type GateRule = {
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

/** How far on the way from `from` to the limit a value is: 0 at the start, 1 at the limit. */
function closenessOf(rule: GateRule, value: number, limit: number): number {
  if (rule.isLowest && rule.from > limit) return Math.max(0, (rule.from - value) / (rule.from - limit));
  if (rule.isLowest) return value > 0 ? limit / value : Number.POSITIVE_INFINITY;
  if (limit <= rule.from) return value >= limit ? 1 : 0;
  return Math.max(0, (value - rule.from) / (limit - rule.from));
}

/** The gate of a rule as a list of one; empty where the rule has no limit. */
export function gateOf(rule: GateRule): Gate[] {
  const { limit, measured } = rule;
  if (limit === null) return [];
  const predicted = rule.predicted ?? null;
  const worse = predicted === null ? null : rule.isLowest ? predicted[0] : predicted[1];
  const told = measured ?? worse;
  const closeness = told === null ? null : closenessOf(rule, told, limit);
  const isClosed = measured !== null && (rule.isLowest ? measured < limit : measured >= limit);
  const isNear = closeness !== null && closeness >= nearFrom;
  const state: GateState = isClosed ? 'closed' : isNear ? 'near' : measured === null ? 'unmeasured' : 'open';
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
