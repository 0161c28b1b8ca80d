import { celsius } from '../units/index.ts';
import { type Gate, type GateRule, gateOf, gateQuantities } from './gate.ts';
import type { LadderLimits } from './limits.ts';
import type { Measured } from './measured.ts';

/** Fuel pressure that falls below this share of its start is a pump or filter at its end (common practice). */
const fuelPressureHolds = 0.95;
/** Fluid below this share of the planned flow is a clog or a weak pump (common practice over a tank). */
const flowHolds = 0.85;

/** Share of its delivery that a fuel pump is planned to: it ages, and the voltage sags (common practice). */
export const fuelPumpShare = 0.9;

/** What foretells gates that no pull has measured yet, SI; low and high. */
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

/** What the gates of an entry are held against. */
export type GateContext = {
  readonly limits: LadderLimits;
  /** [K] */
  readonly ambientTemperature: number;
  /** [Pa] */
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

/** Keep this far below the end of a manifold pressure sensor: it reads flat there (common practice). */
export const mapMargin = 0.95;

/**
 * The stop rules of one entry or step: what they are set to, what was measured, how close it came.
 *
 * @param measured  of the entry's pulls; nothingMeasured for a step to come
 *
 * Knock: one event stops, two send back a step. A gate without a limit is left out, one with a limit and no channel
 * stays as `unmeasured`: unseen is not passed.
 *
 * Source: common practice; each limit's own origin in explain-gate.ts.
 */
export function gatesOf(
  measured: Measured,
  context: GateContext,
  foretold: Foretold = nothingForetold,
): readonly Gate[] {
  const { limits } = context;
  const mapEnd = context.mapSensor === null ? null : mapMargin * context.mapSensor;
  const mapLimits = [mapEnd, limits.mapCeiling].filter((limit) => limit !== null);
  const mapLimit = mapLimits.length > 0 ? Math.min(...mapLimits) : null;
  const knocks = measured.knockEvents;
  const boostForetold = foretold.manifoldPressure;
  const rules: GateRule[] = [
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
      // Richer than 0.75 costs power and washes walls, so nobody stays there (common practice).
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
        ] satisfies GateRule[])
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
      from: celsius(600),
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
      // Planned to the limit; this far past it the next moment is static, and lean (common practice: 85 and 90 %).
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
