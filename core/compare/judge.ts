import type { Note } from '../result/index.ts';
import { differenceCurve } from './curve/difference-curve.ts';
import { scatterAlong } from './curve/scatter-along.ts';
import { decide } from './decide.ts';
import type { JudgeInput } from './judge-input.ts';
import { type EffectWithRemarks, findEffect } from './levels/find-effect.ts';
import { intakeBelongsToChange } from './levels/nuisances.ts';
import { controlReasons, isBoostSteady } from './reasons/engine-control.ts';
import { knockRemarks, whyNotComparable } from './reasons/why-not-comparable.ts';
import { chosenOf, type LaidOver, layOver } from './selection/lay-over.ts';
import type { Row } from './selection/rows.ts';
import type { DifferenceCurve, Verdict } from './verdict.ts';
import { weatherBetween } from './weather.ts';
import { hearWitnesses } from './witnesses/hear-witnesses.ts';
import { lostWitnesses, movementsOf } from './witnesses/movements-of.ts';

/** What counts as equal where nobody says otherwise, as a share of power. */
export const defaultMargin = 0.01;

/** Pulls a side before anyone can speak of repeatability. */
const fewestPulls = 3;

/**
 * Two entries judged against each other: what the pulls prove, and whether anything else moved.
 *
 * The pull is the unit of replication. The effect is the difference of band means of wheel power on a
 * logarithmic scale (pulls of one setup scatter by a share of power), after minus before: a gain is positive.
 * Repeatability is pooled over the session's entries; intake temperature, drift and direction are held equal as
 * far as pulls of one setup tell their effect and widen the interval as far as not.
 *
 * @param input  before and after, the session's entries for pooling, the declared change, the margin as a share
 * @returns      powers in W, engine speeds in rad/s, shares of the mean before
 *
 * Gain or loss: the 95 % interval excludes zero. Equivalent: two one-sided 5 % tests inside the margin; this
 * comes first. Undecided: neither, and always with one pull a side and no repeatability from elsewhere. Not
 * comparable: for the reasons given; then no effect is stated, curves and witnesses are.
 *
 * Source: see levels/level-fit, curve/simultaneous, decide; thresholds of witnesses are common practice.
 */
export function judge(input: JudgeInput): Verdict {
  return judgeWithP(input).verdict;
}

/** The verdict, with the p value of its statement before any adjustment; null where it states none. */
export function judgeWithP(input: JudgeInput): { readonly verdict: Verdict; readonly p: number | null } {
  const layout = layOver(input);
  const empty: Verdict = {
    kind: 'not-comparable',
    effect: null,
    interval95: null,
    effectShare: null,
    band_rad_s: null,
    pullsBefore: layout.counts.before,
    pullsAfter: layout.counts.after,
    morePulls: null,
    smallestSeen: null,
    repeatability: null,
    margin: input.margin ?? defaultMargin,
    meanBefore: null,
    reasons: layout.reasons,
    remarks: layout.remarks,
    witnesses: [],
    curve: null,
  };
  const { laid } = layout;
  if (!laid) return { verdict: empty, p: null };
  const sides = { before: chosenOf(laid.before), after: chosenOf(laid.after) };
  const kind = input.declared?.kind ?? null;
  const weather = weatherBetween(sides.before, sides.after);
  const movements = movementsOf(laid.rows, laid.grid);
  const effect = findEffect(laid.rows, laid.grid, {
    declared: input.declared,
    prior: input.prior ?? null,
    lastingVariance: weather.variance,
    isBoostSteady: isBoostSteady(movements, kind),
  });
  const isIntakeCorrected = effect?.found.corrections.intake !== undefined && !intakeBelongsToChange(kind);
  const hearing = hearWitnesses(movements, input.declared, isIntakeCorrected);
  const reasons = oncePerCode([
    ...layout.reasons,
    ...whyNotComparable(sides, laid.grid, !layout.reasons.some(isOtherGear)),
    ...weather.reasons,
    ...controlReasons(movements, hearing.supposed),
    ...hearing.reasons,
  ]);
  const remarks = [
    ...layout.remarks,
    ...hearing.remarks,
    ...lostWitnesses(laid.rows, movements),
    ...knockRemarks(sides),
    ...weather.remarks,
    ...(effect?.remarks ?? []),
  ];
  const curve = curveOf(laid, effect);
  const seen: Verdict = {
    ...empty,
    band_rad_s: laid.grid.band,
    meanBefore: Math.exp(meanLevel(laid.before)),
    reasons,
    remarks,
    witnesses: hearing.witnesses,
    curve,
  };
  if (reasons.length > 0) return { verdict: { ...seen, curve: { ...curve, proven: [] } }, p: null };
  return effect ? decided(seen, laid, effect) : { verdict: undecidable(seen, laid), p: null };
}

/** Nobody knows how pulls repeat: the difference is stated, nothing is claimed of it. */
function undecidable(seen: Verdict, { before, after }: LaidOver): Verdict {
  const share = Math.expm1(meanLevel(after) - meanLevel(before));
  const isSingle = before.length === 1 && after.length === 1;
  return {
    ...seen,
    kind: 'undecided',
    effect: share * (seen.meanBefore ?? Number.NaN),
    effectShare: share,
    morePulls: Math.max(1, fewestPulls - Math.min(before.length, after.length)),
    reasons: [{ code: isSingle ? 'compare/one-pull' : 'compare/no-repeatability', facts: {} }],
  };
}

function decided(
  seen: Verdict,
  { before, after }: LaidOver,
  { found }: EffectWithRemarks,
): { readonly verdict: Verdict; readonly p: number } {
  const mean = seen.meanBefore ?? Number.NaN;
  const watts = (log: number) => mean * Math.expm1(log);
  const decision = decide(found.effect, seen.margin);
  const [low, high] = decision.interval95.map(watts) as [number, number];
  const effect = watts(found.effect.difference);
  const remarks: Note[] = [...seen.remarks];
  if (decision.isSmallButReal) {
    remarks.push({ code: 'compare/small-but-real', facts: { effect, half: (high - low) / 2 } });
  }
  if (before.length === 1) remarks.push({ code: 'compare/single-pull-side', facts: { side: 'before' } });
  if (after.length === 1) remarks.push({ code: 'compare/single-pull-side', facts: { side: 'after' } });
  const open: Note = { code: 'compare/open', facts: { low, high, margin: seen.margin * mean } };
  const { variance, degrees } = found.repeatability;
  const verdict: Verdict = {
    ...seen,
    kind: decision.kind,
    effect,
    interval95: [low, high],
    effectShare: Math.expm1(found.effect.difference),
    morePulls: decision.morePulls,
    smallestSeen: watts(decision.smallestSeen),
    repeatability: { deviation: mean * Math.sqrt(variance), degrees },
    reasons: decision.kind === 'undecided' ? [open] : [],
    remarks,
  };
  return { verdict, p: decision.p };
}

function curveOf({ grid, before, after }: LaidOver, effect: EffectWithRemarks | null): DifferenceCurve {
  const powers = (rows: readonly Row[]) => rows.map((r) => r.power);
  const raw = meanLevel(after) - meanLevel(before);
  return differenceCurve(
    grid,
    { before: powers(before), after: powers(after) },
    effect ? scatterAlong(effect.curves) : null,
    {
      correction: effect ? effect.found.effect.difference - raw : 0,
      variance: effect ? effect.found.effect.nuisance + effect.found.effect.lasting : 0,
    },
  );
}

function isOtherGear({ code }: Note): boolean {
  return code === 'compare/other-gear' || code === 'compare/other-gear-by-speeds';
}

/** Retard may be told by single pulls and by the whole side: the later, fuller one counts. */
function oncePerCode(reasons: readonly Note[]): Note[] {
  return reasons.filter(
    (r, i) => r.code !== 'compare/knock-retard' || !reasons.slice(i + 1).some((x) => x.code === r.code),
  );
}

function meanLevel(rows: readonly Row[]): number {
  return rows.reduce((sum, r) => sum + r.level, 0) / rows.length;
}
