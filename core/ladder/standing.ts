import type { ChangeKind, Verdict } from '../compare/index.ts';
import type { Gate } from './gate.ts';
import { closedGates, type GateContext, gatesOf } from './gates-of.ts';
import type { Measured } from './measured.ts';

/** One entry of the ledger, as far as the ladder follows from it. SI in the kind's own quantity. */
export type LadderEntry = {
  readonly id: string;
  readonly kind: 'baseline' | ChangeKind;
  readonly from: number | null;
  /** Where `from` is null, a spark step's size. */
  readonly to: number | null;
  /** Of a `nothing` entry: the one that was driven again; null or left out for the one before. */
  readonly repeats?: string | null;
  readonly state: 'kept' | 'dropped';
  /** Null while it is not judged; the baseline never is. */
  readonly verdict: Pick<
    Verdict,
    'kind' | 'effect' | 'effectShare' | 'interval95' | 'morePulls' | 'margin'
  > | null;
  readonly measured: Measured;
};

/** What a gate or a verdict said of one entry. */
export type ReadEntry = LadderEntry & { readonly gates: readonly Gate[]; readonly closed: readonly Gate[] };

/** Where the engine stands after the ledger: what is set now, and what it has shown on the way. */
export type Standing = {
  readonly entries: readonly ReadEntry[];
  readonly baseline: ReadEntry | null;
  readonly last: ReadEntry | null;
  /** Last kept entry whose gates all stayed open, or held. */
  readonly lastGood: ReadEntry | null;
  readonly isSprayOn: boolean;
  readonly spray: ReadEntry | null;
  /** Set at the last good entry: gauge [Pa], over the baseline's spark [rad], lambda. */
  readonly boost: number;
  readonly spark_rad: number;
  readonly lambda: number;
  /** Highest boost without knock, spray on; null before one was driven. */
  readonly soundBoost: number | null;
  /** Where it knocked: boost, spark over the baseline's, and how often; null where it never did. */
  readonly knock: {
    readonly boost: number;
    readonly spark_rad: number;
    readonly kind: LadderEntry['kind'];
    readonly events: number;
  } | null;
  /** Power now over the baseline's, by the verdicts: low and high. */
  readonly powerRatio: readonly [number, number];
  /** New entries since the baseline or since an earlier one was driven again. */
  readonly sinceReturn: number;
  /** The last spark step brought less than the margin. */
  readonly sparkBringsLittle: boolean;
};

/** What is set at one entry: boost gauge [Pa], spark over the baseline's, lambda. */
type Setting = { boost: number; spark_rad: number; lambda: number; isSprayOn: boolean };

/** A gate that asks for going back or stopping; holding boost or cooling down does not undo an entry. */
export function undoes(gate: Gate): boolean {
  return gate.ifClosed !== 'hold-boost' && gate.ifClosed !== 'cool-down' && gate.ifClosed !== 'refill';
}

/** Driven with a channel that tells of knock: without one, silence shows nothing. */
function isListenedTo({ measured }: LadderEntry): boolean {
  return measured.pulls > 0 && measured.knockEvents !== null;
}

function sizeOf(entry: LadderEntry): number {
  if (entry.to === null) return 0;
  return entry.from === null ? entry.to : entry.to - entry.from;
}

/**
 * Reads the ledger from the front: what each entry set, what it measured, what may stand.
 *
 * @param start  before the first entry: boost [Pa gauge] and lambda of the baseline
 */
export function standingOf(
  ledger: readonly LadderEntry[],
  start: { readonly boost: number; readonly lambda: number },
  context: (isSprayOn: boolean, boost: number) => GateContext,
): Standing {
  let boost = start.boost;
  let [spark_rad, lambda] = [0, start.lambda];
  let isSprayOn = false;
  let spray: ReadEntry | null = null;
  let soundBoost: number | null = null;
  let knock: Standing['knock'] = null;
  let powerRatio: readonly [number, number] = [1, 1];
  let sinceReturn = 0;
  let sparkBringsLittle = false;
  let lastGood: ReadEntry | null = null;
  let baseline: ReadEntry | null = null;
  const entries: ReadEntry[] = [];
  const settings = new Map<string, Setting>();
  for (const entry of ledger) {
    // Driven again stands where the repeated entry stood, its spray included, and leaves what is set now alone.
    const repeated = entry.kind === 'nothing' && entry.repeats ? settings.get(entry.repeats) : undefined;
    const set: Setting = { ...(repeated ?? { boost, spark_rad, lambda, isSprayOn }) };
    if (entry.kind === 'boost' && entry.to !== null) set.boost = entry.to;
    if (entry.kind === 'spark') set.spark_rad += sizeOf(entry);
    if (entry.kind === 'mixture' && entry.to !== null) set.lambda = entry.to;
    if (entry.kind === 'spray') set.isSprayOn = true;
    settings.set(entry.id, set);
    const gates = gatesOf(entry.measured, context(set.isSprayOn, set.boost));
    const closed = closedGates(gates);
    const read: ReadEntry = { ...entry, gates, closed };
    entries.push(read);
    if (entry.kind === 'baseline') {
      baseline = read;
      lastGood ??= read;
    }
    if (entry.kind === 'nothing') sinceReturn = 0;
    else if (entry.kind !== 'baseline') sinceReturn++;
    const knocked = closed.find((g) => g.quantity === 'knock');
    if (knocked && (knock === null || set.boost <= knock.boost))
      knock = {
        boost: set.boost,
        spark_rad: set.spark_rad,
        kind: entry.kind,
        events: (knock && knock.boost === set.boost ? knock.events : 0) + (knocked.measured ?? 1),
      };
    if (entry.state === 'dropped' || closed.some(undoes)) continue;
    if (repeated) {
      if (set.isSprayOn && isListenedTo(entry)) soundBoost = Math.max(soundBoost ?? 0, set.boost);
      continue;
    }
    if (entry.kind === 'spray') spray = read;
    if (entry.kind === 'spark')
      sparkBringsLittle =
        entry.verdict?.kind === 'equivalent' ||
        entry.verdict?.kind === 'loss' ||
        (entry.verdict?.kind === 'gain' && (entry.verdict.effectShare ?? 1) < entry.verdict.margin);
    if (entry.verdict?.kind === 'loss' && entry.kind !== 'spray' && entry.kind !== 'nothing') continue;
    ({ boost, spark_rad, lambda, isSprayOn } = set);
    lastGood = read;
    if (isSprayOn && isListenedTo(entry)) soundBoost = Math.max(soundBoost ?? 0, boost);
    powerRatio = withEffect(powerRatio, entry);
  }
  return {
    entries,
    baseline,
    last: entries[entries.length - 1] ?? null,
    lastGood,
    isSprayOn,
    spray,
    boost,
    spark_rad,
    lambda,
    soundBoost,
    knock,
    powerRatio,
    sinceReturn,
    sparkBringsLittle,
  };
}

function withEffect(ratio: readonly [number, number], entry: LadderEntry): readonly [number, number] {
  const { verdict } = entry;
  if (!verdict || verdict.effectShare === null || !verdict.interval95 || !verdict.effect) return ratio;
  if (entry.kind === 'nothing' || verdict.kind === 'not-comparable') return ratio;
  // The interval is in watts, the share in parts of the mean before: one scale turns the one into the other.
  const scale = verdict.effectShare / verdict.effect;
  return [ratio[0] * (1 + verdict.interval95[0] * scale), ratio[1] * (1 + verdict.interval95[1] * scale)];
}
