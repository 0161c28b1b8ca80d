import type { Note } from '../result/index.ts';
import { narrowestBand_rad_s, sharedBand } from './band/common-band.ts';
import { gridOver } from './band/grid.ts';
import { differenceCurve } from './curve/difference-curve.ts';
import { scatterAlong } from './curve/scatter-along.ts';
import { decide } from './decide.ts';
import type { JudgeInput } from './judge-input.ts';
import { findEffect } from './levels/find-effect.ts';
import { intakeBelongsToChange } from './levels/nuisances.ts';
import { knockEventsOf, whyNotComparable } from './reasons/why-not-comparable.ts';
import { type Choice, choosePulls, factsOf } from './selection/choose-pulls.ts';
import { leaveOutOdd } from './selection/leave-out-odd.ts';
import { afterSetup, beforeSetup, gatherRows, type Row } from './selection/rows.ts';
import type { Verdict } from './verdict.ts';
import { weatherBetween } from './weather.ts';
import { hearWitnesses } from './witnesses/hear-witnesses.ts';
import type { Movement } from './witnesses/movement.ts';
import { movementsOf } from './witnesses/movements-of.ts';
import { quantityRules } from './witnesses/quantity-rules.ts';

/** What counts as equal where nobody says otherwise, as a share of power. */
export const defaultMargin = 0.01;

/** Intake temperatures this far apart are beyond what a correction by practice can carry [K]. */
const intakeLimit = 15;
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
  const margin = input.margin ?? defaultMargin;
  const choice = choosePulls(input);
  const empty = emptyVerdict(choice, margin);
  const missing = (['before', 'after'] as const).filter((side) => choice[side].length === 0);
  if (missing.length > 0) {
    const reasons = missing.map((side): Note => ({ code: 'compare/no-pulls', facts: { side } }));
    return { verdict: { ...empty, reasons: [...choice.reasons, ...reasons] }, p: null };
  }
  const common = sharedBand([...choice.before, ...choice.after].map((c) => c.band));
  const asked = common && input.band_rad_s ? cut(input.band_rad_s, common) : common;
  if (!common || !asked) {
    const reasons: Note[] = [...choice.reasons, { code: 'compare/no-common-band', facts: {} }];
    return { verdict: { ...empty, reasons }, p: null };
  }
  const grid = gridOver(asked);
  const gathered = gatherRows(grid, choice, input.session ?? []);
  const gaps = [...choice.before, ...choice.after]
    .filter((c) => !gathered.some((r) => r.chosen === c))
    .map((c): Note => ({ code: 'compare/left-out-no-power', facts: factsOf(c) }));
  const { rows, leftOut } = leaveOutOdd(gathered);
  const before = rows.filter((r) => r.group === beforeSetup);
  const after = rows.filter((r) => r.group === afterSetup);
  const sides = { before: chosenOf(before), after: chosenOf(after) };
  const emptied = (['before', 'after'] as const).filter((side) => sides[side].length === 0);
  if (emptied.length > 0) {
    const reasons = emptied.map((side): Note => ({ code: 'compare/no-pulls', facts: { side } }));
    return { verdict: { ...empty, reasons, remarks: [...choice.leftOut, ...gaps] }, p: null };
  }
  const weather = weatherBetween(sides.before, sides.after);
  const movements = movementsOf(rows, grid);
  const effect = findEffect(rows, grid, {
    declared: input.declared,
    prior: input.prior ?? null,
    lastingVariance: weather.variance,
    isBoostSteady: isBoostSteady(movements, input.declared?.kind ?? null),
  });
  const isIntakeCorrected =
    effect?.found.corrections.intake !== undefined && !intakeBelongsToChange(input.declared?.kind ?? null);
  const hearing = hearWitnesses(movements, input.declared, isIntakeCorrected);
  const reasons = oncePerCode([
    ...choice.reasons,
    ...whyNotComparable(sides, grid),
    ...weather.reasons,
    ...intakeReasons(movements, input.declared?.kind ?? null),
    ...retardReasons(movements),
    ...hearing.reasons,
  ]);
  const remarks = [
    ...choice.leftOut,
    ...gaps,
    ...leftOut,
    ...bandRemarks(input.band_rad_s ?? null, asked),
    ...hearing.remarks,
    ...knockRemarks(sides, reasons),
    ...weather.remarks,
    ...(effect?.remarks ?? []),
  ];
  const meanBefore = Math.exp(meanLevel(before));
  const raw = meanLevel(after) - meanLevel(before);
  const curve = differenceCurve(
    grid,
    { before: before.map((r) => r.power), after: after.map((r) => r.power) },
    effect ? scatterAlong(effect.curves) : null,
    {
      correction: (effect?.found.effect.difference ?? raw) - raw,
      variance: effect ? effect.found.effect.nuisance + effect.found.effect.lasting : 0,
    },
  );
  const shared = {
    ...empty,
    band_rad_s: asked,
    pullsBefore: before.length,
    pullsAfter: after.length,
    meanBefore,
    witnesses: hearing.witnesses,
  };
  if (reasons.length > 0) {
    return { verdict: { ...shared, reasons, remarks, curve: { ...curve, proven: [] } }, p: null };
  }
  const watts = (log: number) => meanBefore * Math.expm1(log);
  if (!effect) {
    const isSingle = before.length === 1 && after.length === 1;
    const verdict: Verdict = {
      ...shared,
      kind: 'undecided',
      effect: watts(raw),
      effectShare: Math.expm1(raw),
      morePulls: Math.max(1, fewestPulls - Math.min(before.length, after.length)),
      reasons: [{ code: isSingle ? 'compare/one-pull' : 'compare/no-repeatability', facts: {} }],
      remarks,
      curve,
    };
    return { verdict, p: null };
  }
  const { found } = effect;
  const decision = decide(found.effect, margin);
  const [low, high] = decision.interval95;
  if (decision.isSmallButReal) {
    const half = (watts(high) - watts(low)) / 2;
    remarks.push({ code: 'compare/small-but-real', facts: { effect: watts(found.effect.difference), half } });
  }
  for (const side of ['before', 'after'] as const) {
    if (sides[side].length === 1) remarks.push({ code: 'compare/single-pull-side', facts: { side } });
  }
  const decided: Verdict = {
    ...shared,
    kind: decision.kind,
    effect: watts(found.effect.difference),
    interval95: [watts(low), watts(high)],
    effectShare: Math.expm1(found.effect.difference),
    morePulls: decision.morePulls,
    smallestSeen: watts(decision.smallestSeen),
    repeatability: {
      deviation: meanBefore * Math.sqrt(found.repeatability.variance),
      degrees: found.repeatability.degrees,
    },
    reasons:
      decision.kind === 'undecided'
        ? [
            {
              code: 'compare/open',
              facts: { low: watts(low), high: watts(high), margin: margin * meanBefore },
            },
          ]
        : [],
    remarks,
    curve,
  };
  return { verdict: decided, p: decision.p };
}

function emptyVerdict(choice: Choice, margin: number): Verdict {
  return {
    kind: 'not-comparable',
    effect: null,
    interval95: null,
    effectShare: null,
    band_rad_s: null,
    pullsBefore: choice.before.length,
    pullsAfter: choice.after.length,
    morePulls: null,
    smallestSeen: null,
    repeatability: null,
    margin,
    meanBefore: null,
    reasons: choice.reasons,
    remarks: choice.leftOut,
    witnesses: [],
    curve: null,
  };
}

/** Retard may be told by single pulls and by the whole side: the later, fuller one counts. */
function oncePerCode(reasons: readonly Note[]): Note[] {
  return reasons.filter(
    (r, i) => r.code !== 'compare/knock-retard' || !reasons.slice(i + 1).some((x) => x.code === r.code),
  );
}

function cut(
  asked: readonly [number, number],
  common: readonly [number, number],
): readonly [number, number] | null {
  const low = Math.max(asked[0], common[0]);
  const high = Math.min(asked[1], common[1]);
  return high - low >= narrowestBand_rad_s / 2 ? [low, high] : null;
}

function bandRemarks(asked: readonly [number, number] | null, used: readonly [number, number]): Note[] {
  const isCut = asked && (used[0] - asked[0] > 1 || asked[1] - used[1] > 1);
  return isCut ? [{ code: 'compare/band-cut', facts: { asked, used } }] : [];
}

function chosenOf(rows: readonly Row[]) {
  return rows.flatMap((r) => r.chosen ?? []);
}

function meanLevel(rows: readonly Row[]): number {
  return rows.reduce((sum, r) => sum + r.level, 0) / rows.length;
}

function isBoostSteady(movements: readonly Movement[], kind: string | null): boolean {
  return (
    kind !== 'boost' && !movements.some((m) => quantityRules[m.quantity]?.control === 'boost' && m.hasMoved)
  );
}

function intakeReasons(movements: readonly Movement[], kind: string | null): Note[] {
  const intake = movements.find((m) => m.quantity === 'intakeTemperature');
  const isOwn = kind === 'boost' || kind === 'spray' || kind === 'fluid';
  return intake && !isOwn && Math.abs(intake.delta) > intakeLimit
    ? [{ code: 'compare/intake-apart', facts: { delta: intake.delta } }]
    : [];
}

/** Knock control at work more on one side than on the other, over all its pulls. */
function retardReasons(movements: readonly Movement[]): Note[] {
  const retard = movements.find((m) => m.quantity === 'knockRetard');
  return retard?.hasMoved
    ? [{ code: 'compare/knock-retard', facts: { before: retard.before, after: retard.after } }]
    : [];
}

function knockRemarks(sides: Parameters<typeof knockEventsOf>[0], reasons: readonly Note[]): Note[] {
  const heard = knockEventsOf(sides);
  if (!heard || heard.before + heard.after === 0) return [];
  return reasons.some((r) => r.code === 'compare/knock-events')
    ? []
    : [{ code: 'compare/knock-heard', facts: heard }];
}
