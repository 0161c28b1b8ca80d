import type { Metering } from '../delivery/index.ts';
import type { Explanation } from '../units/index.ts';

export const strategyNames = ['later-start', 'full-beyond', 'by-hand'] as const;
export type StrategyName = (typeof strategyNames)[number];

/** Start and full point of the spray [Pa gauge]. */
export type SprayPoints = { readonly start: number; readonly full: number };

/** Fluid of a matched nozzle over its ramp, as a share of peak need times peak boost: the triangle under it. */
const matchedArea = (matchedStart: number) => (1 - matchedStart) / 2;

/**
 * Later start: the same mean fluid over the ramp as a matched nozzle, full at peak boost.
 *
 *   r (1 - s) a = (1 - s_m) / 2,   a = 1/2 on a ramp, 1 for on or off
 *   ramp: s = 1 - (1 - s_m) / r
 *
 * @param feed          r, delivered over needed at peak; below 1 it starts as a matched one: more at low boost
 *                      would not make up for what lacks at peak
 * @param matchedStart  s_m, share of peak boost; 0.40 by common practice
 * Check:  s_m = 0.40 gives 0.40 at r = 1, 0.60 at 1.5, 0.647 at 1.7.
 */
export function laterStart(
  feed: number,
  peakBoost: number,
  matchedStart: number,
  metering: Metering,
): SprayPoints {
  const area = metering === 'on-off' ? 1 : 0.5;
  const share = 1 - matchedArea(matchedStart) / (area * Math.max(1, feed));
  return { start: share * peakBoost, full: peakBoost };
}

/**
 * Full point beyond peak: starts as a matched nozzle, and the ramp is stretched until peak flow is the need.
 *
 *   full = start + r (peak - start)
 *
 * Check:  start 40 kPa, peak 100 kPa, r = 1.5: full at 130 kPa.
 */
export function fullBeyond(feed: number, peakBoost: number, matchedStart: number): SprayPoints {
  const start = matchedStart * peakBoost;
  return { start, full: start + Math.max(1, feed) * (peakBoost - start) };
}

/** What the controller takes: multiples of its step, full above start, within its own highest values. */
export function settablePoints(
  points: SprayPoints,
  controller: {
    readonly step: number | null;
    readonly highestStart: number | null;
    readonly highestFull: number | null;
  },
): SprayPoints {
  const limited = {
    start: Math.min(points.start, controller.highestStart ?? Infinity),
    full: Math.min(points.full, controller.highestFull ?? Infinity),
  };
  const { step } = controller;
  if (step === null) return limited;
  // A hair of slack against 0.30000000000000004; a start rounds to the nearer step, full never onto the start.
  const start = Math.round(limited.start / step + 1e-9) * step;
  return { start, full: Math.max(start + step, Math.round(limited.full / step + 1e-9) * step) };
}

/** Where start and full point come from: what was asked for, and what the controller takes of it. */
export function explainPoints(
  name: StrategyName,
  of: {
    readonly feed: number;
    readonly peakBoost: number;
    readonly matchedStart: number;
    readonly points: SprayPoints;
  },
): Explanation {
  const formulas: Record<StrategyName, { formula: string; tex: string }> = {
    'later-start': { formula: 's = 1 - (1 - s_m) / r', tex: String.raw`s = 1-\frac{1-s_m}{r}` },
    'full-beyond': {
      formula: 'full = start + r (peak - start)',
      tex: String.raw`p_\mathrm{full} = p_\mathrm{start} + r\,(p_\mathrm{peak}-p_\mathrm{start})`,
    },
    'by-hand': { formula: 'start and full as set by hand', tex: String.raw`\text{start, full: by hand}` },
  };
  const isByHand = name === 'by-hand';
  return {
    id: `injection/${name}`,
    ...formulas[name],
    inputs: [
      { symbol: 'r', value: of.feed, kind: 'share' },
      ...(isByHand ? [] : [{ symbol: 's_m', value: of.matchedStart, kind: 'share' as const }]),
      { symbol: 'peak', value: of.peakBoost, kind: 'boost' },
      { symbol: 'start', value: of.points.start, kind: 'boost' },
      { symbol: 'full', value: of.points.full, kind: 'boost' },
    ],
    source: isByHand
      ? 'set by hand; rounded to the step of the controller where that is known'
      : 'same mean fluid over the ramp; s_m: common practice; rounded to the step of the controller where that is known',
    validRange: isByHand ? [] : [{ symbol: 'r', from: 1, to: 2, kind: 'share' }],
  };
}
