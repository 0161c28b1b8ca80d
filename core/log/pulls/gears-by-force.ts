import { dragOf, torqueShare } from '../rises/middling-car.ts';
import { slopeOf } from '../rises/steady-rise.ts';
import type { Span } from '../span.ts';
import type { Draft } from './pull-draft.ts';

/** What the car must tell for gears to be told from road speed alone. */
export type Gearing = {
  readonly gearRatios: readonly number[];
  readonly finalDrive: number;
  readonly rollingRadius_m: number;
  /** The gear that most of the pulls are driven in. */
  readonly pullGear: number;
};

/** Curves of torque are compared in steps of 1.5 % of speed. */
const binWidth = 0.015;
const fewestBins = 5;
/** The same engine's torque at the same engine speed comes again within this, as a logarithm (common practice). */
const sameTorque = 0.12;
/** The next gear that could be must fit worse by this. */
const clearlyBetter = 0.04;
/** A pull after a gear change at full throttle was less often the one that was meant (common practice). */
const votes = { own: 1, afterShift: 0.75 } as const;
/** So many votes of another gear, beside those of the told one, leave it open which of the two is the told one. */
const openShare = 0.85;
/** No pull ends faster or begins slower than this [rad/s], 9,500 and 900 rpm (common practice). */
const fastest = 995;
const slowest = 94;
/** With nothing else between them, a pull that begins so soon at the same speed follows a gear change. */
const shift = { within_s: 1.3, speed: 0.08 } as const;
/** At its ends a pull's slope is blurred with what is beside it [s]. */
const blurred = { start_s: 0.35, end_s: 0.25 } as const;
const mostAnchors = 24;

/** Force per mass over speed, in bins of ln v; NaN where a pull has none. */
type ForceCurve = { readonly first: number; readonly values: Float64Array };

/**
 * Which gear each pull was driven in, where only road speed is logged. One engine makes one torque curve: in the right
 * gears the pulls' forces, over each gear's ratio and against engine speed, lie on each other. That fixes the gears up
 * to a step that all share; the gear that the tuner names settles it as the one of most pulls.
 *
 * @param drafts  in order of time; `first` and `last` in m/s
 * @param speed   of the road [m/s]
 * @returns       one gear per draft, 1 for first; null where the force fits none, or several alike
 *
 * Valid:  pulls at one boost. A box whose neighbouring gears make equal power at the shift leaves little between them:
 *         those come out null.
 * Source: T = F r / (i i0), Gillespie, Fundamentals of Vehicle Dynamics, chapter 2 (from memory).
 */
export function gearsByForce(
  drafts: readonly Draft[],
  speed: Float64Array,
  time: Float64Array,
  segments: readonly Span[],
  gearing: Gearing,
): (number | null)[] {
  const { gearRatios, finalDrive, rollingRadius_m: radius, pullGear } = gearing;
  const told = gearRatios.length === 1 ? 0 : pullGear - 1;
  const ratios = gearRatios.map((ratio) => (ratio * finalDrive) / radius);
  if (!(told in ratios) || drafts.length === 0) return drafts.map(() => null);
  const slope = slopeOf(speed, time, segments);
  const curves = drafts.map((draft) => forceCurve(draft, speed, slope, time));
  const lasts = drafts.map((d) => (time[d.to - 1] ?? 0) - (time[d.from] ?? 0));
  const byLength = drafts.map((_, i) => i).sort((a, b) => (lasts[b] ?? 0) - (lasts[a] ?? 0));
  const weights = drafts.map((_, i): number =>
    followsShift(i, drafts, time) ? votes.afterShift : votes.own,
  );
  const stories = byLength.slice(0, mostAnchors).map((anchor) => {
    const gears = gearsFrom(anchor, told, drafts, curves, ratios, time);
    // Both sides of a cut are one pull.
    const counted = weights.map((w, i) => (gears[i] === told && !isCut(i, told, gears, drafts) ? w : 0));
    return { anchor, gears, votes: counted.reduce((a, b) => a + b, 0) };
  });
  const best = stories.reduce((a, b) => (b.votes > a.votes ? b : a));
  const isOpen = stories.some(
    (s) => best.gears[s.anchor] !== null && best.gears[s.anchor] !== told && s.votes > openShare * best.votes,
  );
  const unit = gearRatios.length === 1 ? pullGear : 1;
  return best.gears.map((gear) => (isOpen || gear === null ? null : gear + unit));
}

/** All gears, counted from 0, if one pull was driven in the told gear. */
function gearsFrom(
  anchor: number,
  told: number,
  drafts: readonly Draft[],
  curves: readonly ForceCurve[],
  ratios: readonly number[],
  time: Float64Array,
): (number | null)[] {
  const gears: (number | null)[] = drafts.map(() => null);
  const isPossible = (i: number, gear: number) => {
    const ratio = ratios[gear] ?? Number.NaN;
    const { first, last } = drafts[i] as Draft;
    return first * ratio >= slowest && last * ratio <= fastest;
  };
  if (!isPossible(anchor, told)) return gears;
  gears[anchor] = told;
  // What meets none of the settled pulls may meet one that is settled after it.
  for (let pass = 0; pass < 2; pass++) {
    for (let i = 0; i < drafts.length; i++) {
      if (gears[i] !== null) continue;
      let best: { gear: number; off: number } | null = null;
      let next = Number.POSITIVE_INFINITY;
      // That the force goes on where it ended tells little while the gear above was not tried.
      const isOnlyWay = (gear: number) =>
        !isPossible(i, gear + 1) || !Number.isNaN(misfitOf(i, gear + 1, gears, curves, ratios));
      for (let gear = 0; gear < ratios.length; gear++) {
        if (!isPossible(i, gear) || !mayFollow(gear, i, gears, drafts, time)) continue;
        const met = misfitOf(i, gear, gears, curves, ratios);
        const off =
          Number.isNaN(met) && isCut(i, gear, gears, drafts) && isOnlyWay(gear) ? breakOf(i, curves) : met;
        if (Number.isNaN(off)) continue;
        if (!best || off < best.off) {
          next = best?.off ?? Number.POSITIVE_INFINITY;
          best = { gear, off };
        } else next = Math.min(next, off);
      }
      if (best && best.off < sameTorque && next - best.off > clearlyBetter) gears[i] = best.gear;
    }
  }
  return gears;
}

/** After a gear change at full throttle comes the same gear (a cut) or the one above it. */
function mayFollow(
  gear: number,
  i: number,
  gears: readonly (number | null)[],
  drafts: readonly Draft[],
  time: Float64Array,
): boolean {
  const known = gears[i - 1];
  if (known === null || known === undefined || !followsShift(i, drafts, time)) return true;
  return gear === known || gear === known + 1;
}

/** Whether a gear would make a part and the one before it two sides of a cut of torque. */
function isCut(
  i: number,
  gear: number,
  gears: readonly (number | null)[],
  drafts: readonly Draft[],
): boolean {
  return Boolean(drafts[i]?.afterChange && drafts[i - 1]?.beforeChange && gears[i - 1] === gear);
}

/** Step of the force from the end of one part to the beginning of the next, as a logarithm. */
function breakOf(i: number, curves: readonly ForceCurve[]): number {
  const known = (curve: ForceCurve | undefined) => curve?.values.filter((force) => !Number.isNaN(force));
  const end = known(curves[i - 1])?.at(-1) ?? Number.NaN;
  const start = known(curves[i])?.[0] ?? Number.NaN;
  return Math.abs(start - end);
}

/** Whether a pull goes on where the one before it ended, after no more than a gear change. */
function followsShift(i: number, drafts: readonly Draft[], time: Float64Array): boolean {
  const before = drafts[i - 1];
  const draft = drafts[i] as Draft;
  if (!before) return false;
  const gap = (time[draft.from] ?? 0) - (time[before.to - 1] ?? 0);
  return gap <= shift.within_s && Math.abs(draft.first / before.last - 1) <= shift.speed;
}

/** Middle distance between a pull's torque in a gear and that of the settled pulls; NaN where they do not meet. */
function misfitOf(
  i: number,
  gear: number,
  gears: readonly (number | null)[],
  curves: readonly ForceCurve[],
  ratios: readonly number[],
): number {
  const curve = curves[i] as ForceCurve;
  const offs: number[] = [];
  for (const [k, known] of gears.entries()) {
    if (known === null || k === i) continue;
    const other = curves[k] as ForceCurve;
    const ratio = ratios[gear] as number;
    const otherRatio = ratios[known] as number;
    const lift = Math.log(torqueShare(ratio) / torqueShare(otherRatio));
    const moved = Math.log(ratio / otherRatio) / binWidth;
    let met = 0;
    const here: number[] = [];
    curve.values.forEach((force, b) => {
      const there = valueAt(other, curve.first + b + moved);
      if (Number.isNaN(force) || Number.isNaN(there)) return;
      here.push(Math.abs(force + lift - there));
      met++;
    });
    if (met >= fewestBins) offs.push(...here);
  }
  if (offs.length === 0) return Number.NaN;
  return offs.sort((a, b) => a - b)[offs.length >> 1] as number;
}

function forceCurve(draft: Draft, speed: Float64Array, slope: Float64Array, time: Float64Array): ForceCurve {
  const first = Math.floor(Math.log(draft.first) / binWidth) - 1;
  const count = Math.max(1, Math.ceil(Math.log(draft.last) / binWidth) + 2 - first);
  const sums = new Float64Array(count);
  const counts = new Uint32Array(count);
  const [from_s, to_s] = [
    (time[draft.from] ?? 0) + blurred.start_s,
    (time[draft.to - 1] ?? 0) - blurred.end_s,
  ];
  for (let i = draft.from; i < draft.to; i++) {
    const v = speed[i] ?? Number.NaN;
    const t = time[i] ?? 0;
    const bin = Math.round(Math.log(v) / binWidth) - first;
    const force = (slope[i] ?? Number.NaN) + dragOf(v);
    if (t < from_s || t > to_s || !(force > 0) || !(bin >= 0 && bin < count)) continue;
    sums[bin] = (sums[bin] ?? 0) + Math.log(force);
    counts[bin] = (counts[bin] ?? 0) + 1;
  }
  return { first, values: sums.map((sum, b) => sum / (counts[b] ?? 0)) };
}

/** Between two bins by a line; NaN outside and beside an empty one. */
function valueAt({ first, values }: ForceCurve, bin: number): number {
  const x = bin - first;
  const i = Math.floor(x);
  const a = values[i] ?? Number.NaN;
  const b = values[i + 1] ?? Number.NaN;
  return a + (x - i) * (b - a);
}
