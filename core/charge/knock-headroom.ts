import { petrol, stoichiometricAirFuel } from '../fluids/index.ts';
import { fail, type Note, ok, type Result } from '../result/index.ts';
import { degrees, type Explanation } from '../units/index.ts';
import { blendOctane } from './blend-octane.ts';
import { type ChargePath, type ChargeState, chargeAlong, partsOf } from './charge-along.ts';
import type { Crank } from './crank.ts';
import { explainIgnitionDelay } from './ignition-delay.ts';
import { knockIntegral } from './knock-integral.ts';
import { portOverPressure } from './port-over-pressure.ts';
import { practiceDropDiameter } from './spray-cloud.ts';
import { trapped } from './trapped.ts';

/** The engine as the knock sums see it. */
export type KnockEngine = {
  readonly crank: Crank;
  /** Closing of the inlet valve after bottom dead centre [rad]. */
  readonly intakeClosing_rad: number;
  /** Research octane of the petrol. */
  readonly octane: number;
  /** Of the whole, for the mass of petrol that the octane is shared with. */
  readonly lambda: number;
};

export type HeadroomQuestion = {
  readonly engine: KnockEngine;
  readonly engineSpeed_rad_s: number;
  /** A point that this engine has shown. */
  readonly shown: {
    readonly path: ChargePath;
    /** Before top dead centre [rad]. */
    readonly spark_rad: number;
    /** Gauge, for the words alone [Pa]. */
    readonly boost: number;
    /** Knocked there; else ran without. */
    readonly isKnockLimited: boolean;
  };
  /** The way of the charge that is asked about, spray and day included, at any manifold pressure [Pa]. */
  readonly asked: (manifoldPressure: number) => ChargePath;
};

export type KnockHeadroom = {
  /** Spark at the shown boost that gives the shown integral, less the shown spark [rad], low and high. */
  readonly spark_rad: readonly [number, number];
  /** Boost at the shown spark that gives it, less the shown boost [Pa], low and high. */
  readonly boost: readonly [number, number];
  readonly notes: readonly Note[];
  readonly explanations: readonly Explanation[];
};

/** What nobody measures on a car, each with its ends (common practice). */
type Corner = {
  /** Over the stated drop size. */
  readonly dropFactor: number;
  readonly evaporatedInCylinder: number;
  readonly burnDuration_rad: number;
  readonly warming: number;
};

/** A wet corner and a dry one, a quick burn and a slow one, a warm cylinder and a cool one: all eight. */
const corners: readonly Corner[] = [
  { dropFactor: 0.6, evaporatedInCylinder: 0.75 },
  { dropFactor: 1.6, evaporatedInCylinder: 0.25 },
].flatMap((spray) =>
  [degrees(45), degrees(70)].flatMap((burnDuration_rad) =>
    [10, 40].map((warming) => ({ ...spray, burnDuration_rad, warming })),
  ),
);

/**
 * What the model itself is off by, over what it says. Gains by water: NACA E-244 measured 0.53 to 1.45 times ours, the
 * low end at a mixture of lambda 0.72. Losses by heat: there, 32 K of air moved the limit 1.86 times as far as ours.
 */
const gainLow = 0.53;
const gainHigh = 1.45;
const lossLow = 1.86;

/** Beyond these nothing is claimed. */
const mostSpark = degrees(12);
const mostBoost = 120e3;

function withDrops(path: ChargePath, factor: number): ChargePath {
  const { spray } = path;
  if (!spray) return path;
  return {
    ...path,
    spray: { ...spray, dropDiameter: (spray.dropDiameter ?? practiceDropDiameter) * factor },
  };
}

function octaneOf(engine: KnockEngine, path: ChargePath): number {
  const { spray } = path;
  if (!spray) return engine.octane;
  const fuelOverAir = 1 / (engine.lambda * stoichiometricAirFuel(petrol.elements));
  return blendOctane(engine.octane, fuelOverAir, partsOf(spray.mix, spray.fluidOverAir));
}

/** Knock integral of a charge in this engine. */
function integralOf(
  question: HeadroomQuestion,
  port: ChargeState,
  octane: number,
  spark_rad: number,
  corner: Corner,
): number {
  const { engine, engineSpeed_rad_s } = question;
  const cylinder = trapped(port, corner);
  return knockIntegral({
    crank: engine.crank,
    closing_rad: engine.intakeClosing_rad - Math.PI,
    pressure: port.air.pressure,
    temperature: cylinder.temperature,
    engineSpeed_rad_s,
    octane,
    spark_rad,
    burnDuration_rad: corner.burnDuration_rad,
    heat: cylinder.heat,
    exponent: cylinder.exponent,
  });
}

/** Where a rising function meets a target, held at the ends: false position in the logarithm, Illinois' halving. */
function meeting(of: (x: number) => number, target: number, from: number, to: number): number {
  const off = (x: number) => Math.log(of(x) / target);
  let [low, high] = [from, to];
  let [below, above] = [off(low), off(high)];
  if (below >= 0) return low;
  if (above <= 0) return high;
  let x = low;
  let side = 0;
  for (let i = 0; i < 20; i++) {
    x = (low * above - high * below) / (above - below);
    const value = off(x);
    // 1e-4 of the integral is a hundredth of a degree.
    if (Math.abs(value) < 1e-4) break;
    if (value < 0) {
      [low, below] = [x, value];
      if (side === -1) above /= 2;
      side = -1;
    } else {
      [high, above] = [x, value];
      if (side === 1) below /= 2;
      side = 1;
    }
  }
  return x;
}

/** What the model says, with what it is off by. */
function widened(values: readonly number[]): readonly [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return [low > 0 ? low * gainLow : low * lossLow, high > 0 ? high * gainHigh : high];
}

/**
 * How much spark, or how much boost, brings the charge that is asked about to the same knock integral as a point
 * this engine has shown. Never an absolute statement, always a range.
 *
 *   I(spark + d, p, T_spray) = I_shown          I(spark, p + d, T_spray(p + d)) = I_shown
 *
 * @returns  low and high over the corners of what nobody measures, widened by what the model itself was off by against
 *           NACA E-244; negative where the charge is worse than the one shown
 *
 * Valid:  one engine speed, mixture as at the shown point; no term for mixture strength, as no published form of this
 *         delay with one was found that holds for rich mixtures of petrol, and fitting one to the check is out. Up to 12 degrees and
 *         1.2 bar; on rich mixtures (lambda below 0.75) read the low end.
 * Errors: charge/spark-outside, and those of chargeAlong.
 * Source: knock-integral.ts, trapped.ts, charge-along.ts.
 */
export function knockHeadroom(question: HeadroomQuestion): Result<KnockHeadroom> {
  const { shown, engine } = question;
  if (!(shown.spark_rad >= degrees(-20) && shown.spark_rad <= degrees(60)))
    return fail({ code: 'charge/spark-outside', facts: { spark: shown.spark_rad } });
  const atPressure = shown.path.manifoldPressure;
  const sparks: number[] = [];
  const boosts: number[] = [];
  const lowest = Math.max(-mostBoost, 0.5 * (question.asked(atPressure).ambient.pressure - atPressure));
  const portsOf = new Map<number, ReturnType<typeof portOverPressure>>();
  for (const corner of corners) {
    const { dropFactor } = corner;
    const portAt =
      portsOf.get(dropFactor) ??
      portOverPressure((p) => withDrops(question.asked(p), dropFactor), atPressure);
    portsOf.set(dropFactor, portAt);
    const before = chargeAlong(withDrops(shown.path, corner.dropFactor));
    if (!before.ok) return before;
    const reference = integralOf(
      question,
      before.value.port,
      octaneOf(engine, shown.path),
      shown.spark_rad,
      corner,
    );
    const here = portAt(atPressure);
    if (!here.ok) return here;
    const octane = octaneOf(engine, question.asked(atPressure));
    sparks.push(
      meeting(
        (d) => integralOf(question, here.value, octane, shown.spark_rad + d, corner),
        reference,
        -mostSpark,
        mostSpark,
      ),
    );
    const top = portAt(atPressure + mostBoost);
    if (!top.ok) return top;
    boosts.push(
      meeting(
        (d) => {
          const port = portAt(atPressure + d);
          // Both ends have been gone to; between them nothing new can fail.
          if (!port.ok) return Number.POSITIVE_INFINITY;
          const octaneThere = octaneOf(engine, question.asked(atPressure + d));
          return integralOf(question, port.value, octaneThere, shown.spark_rad, corner);
        },
        reference,
        lowest,
        mostBoost,
      ),
    );
  }
  const spark = widened(sparks);
  const boost = widened(boosts);
  return ok({
    spark_rad: [spark[0], Math.min(mostSpark, spark[1])],
    boost: [boost[0], Math.min(mostBoost, boost[1])],
    notes: notesOf(question, spark[1], boost[1]),
    explanations: explain(question),
  });
}

function notesOf(question: HeadroomQuestion, spark: number, boost: number): Note[] {
  const { shown, engine } = question;
  const notes: Note[] = [
    {
      code: 'charge/headroom-is-relative',
      facts: { boost: shown.boost, isKnockLimited: shown.isKnockLimited },
    },
  ];
  const octane = octaneOf(engine, question.asked(shown.path.manifoldPressure));
  if (octane > 100 || octane < 80)
    notes.push({ code: 'charge/octane-outside-correlation', facts: { octane } });
  if (spark >= mostSpark)
    notes.push({ code: 'charge/headroom-capped', facts: { what: 'spark', at: mostSpark } });
  if (boost >= mostBoost)
    notes.push({ code: 'charge/headroom-capped', facts: { what: 'boost', at: mostBoost } });
  return notes;
}

function explain(question: HeadroomQuestion): Explanation[] {
  const { shown, engine } = question;
  return [
    {
      id: 'charge/knock-headroom',
      formula: 'I = integral dt / tau(p, T);   I(asked) = I(shown)',
      tex: String.raw`\int\frac{dt}{\tau(p,T)}\Big|_\mathrm{asked}=\int\frac{dt}{\tau(p,T)}\Big|_\mathrm{shown}`,
      inputs: [
        { symbol: 'p shown', value: shown.path.manifoldPressure, kind: 'pressure' },
        { symbol: 'spark shown', value: shown.spark_rad, kind: 'angle' },
        { symbol: 'n', value: question.engineSpeed_rad_s, kind: 'engineSpeed' },
        { symbol: 'r', value: engine.crank.compressionRatio, kind: 'number' },
      ],
      source:
        'Livengood and Wu (1955); Douaud and Eyzat, SAE 780080 (1978); held against NACA E-244: gains of 0.53 to 1.45 times ours',
      validRange: [
        { symbol: 'spark', from: -mostSpark, to: mostSpark, kind: 'angle' },
        { symbol: 'boost', from: 0, to: mostBoost, kind: 'boost' },
      ],
    },
    explainIgnitionDelay(engine.octane, shown.path.manifoldPressure, 800),
  ];
}
