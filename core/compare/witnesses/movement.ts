import type { QuantityId } from '../../log/index.ts';
import { finiteMean } from '../band/grid.ts';
import { pooledVariance, tQuantile } from '../statistics/index.ts';
import { quantityRules } from './quantity-rules.ts';

/** How far one quantity moved from before to after, over the whole band or over a third of it. SI. */
export type Movement = {
  readonly quantity: QuantityId;
  readonly before: number;
  readonly after: number;
  readonly delta: number;
  /** Half of the 95 % interval. */
  readonly half: number;
  readonly degrees: number;
  /** The third that moved most against its threshold, where that is more than the whole band did. */
  readonly most: { readonly delta: number; readonly half: number };
  /** Beyond threshold and beyond chance. */
  readonly hasMoved: boolean;
  /** Most move over threshold: 1 is just noticeable. */
  readonly size: number;
  readonly threshold: number;
};

/** Weight of the usual scatter beside what the session's pulls show, in pulls. */
const usualDegrees = 4;
/** A third is noisier and there are three of them. */
const thirdFactor = 1.25;
/** Chance that scatter alone passes for a move where the threshold doesn't stop it. */
const chance = 0.03;

/**
 * Movement of a quantity between two groups of pulls, with scatter pooled over all groups given.
 *
 * @param curves  per group, per pull: the quantity on the common grid
 * @param judged  which two groups are before and after
 * @returns       null where either side has no reading
 */
export function movementOf(
  quantity: QuantityId,
  curves: readonly (readonly Float64Array[])[],
  judged: readonly [number, number],
): Movement | null {
  const rule = quantityRules[quantity];
  const length = curves.flat()[0]?.length ?? 0;
  const regions: readonly (readonly [number, number])[] = [
    [0, length],
    [0, Math.round(length / 3)],
    [Math.round(length / 3), Math.round((2 * length) / 3)],
    [Math.round((2 * length) / 3), length],
  ];
  const moves = regions.flatMap(([from, to], region) => {
    const groups = curves.map((pulls) => pulls.map((c) => finiteMean(c, from, to)).filter(Number.isFinite));
    const [b, a] = [groups[judged[0]] ?? [], groups[judged[1]] ?? []];
    if (b.length === 0 || a.length === 0) return [];
    const before = b.reduce((x, y) => x + y, 0) / b.length;
    const after = a.reduce((x, y) => x + y, 0) / a.length;
    const unit = unitOf(quantity, before, after);
    const usual = ((rule?.usualScatter ?? 0) * unit) ** 2 * (region === 0 ? 1 : thirdFactor ** 2);
    const found = pooledVariance(groups);
    const prior = rule ? usualDegrees : 0;
    const degrees = found.degrees + prior;
    const squares = (found.degrees > 0 ? found.variance * found.degrees : 0) + usual * prior;
    const error = degrees > 0 ? Math.sqrt((squares / degrees) * (1 / b.length + 1 / a.length)) : Number.NaN;
    const threshold = (rule?.threshold ?? Infinity) * unit * (region === 0 ? 1 : thirdFactor);
    const delta = after - before;
    const isBeyond =
      Math.abs(delta) > threshold && Math.abs(delta) > tQuantile(1 - chance / 2, degrees || 1) * error;
    const half = degrees > 0 ? tQuantile(0.975, degrees) * error : Number.NaN;
    return [{ before, after, delta, half, degrees, isBeyond, threshold, size: Math.abs(delta) / threshold }];
  });
  const whole = moves[0];
  if (!whole) return null;
  const most = moves.reduce((best, m) => {
    if (m.isBeyond !== best.isBeyond) return m.isBeyond ? m : best;
    return m.size > best.size ? m : best;
  }, whole);
  return {
    quantity,
    before: whole.before,
    after: whole.after,
    delta: whole.delta,
    half: whole.half,
    degrees: whole.degrees,
    most: { delta: most.delta, half: most.half },
    hasMoved: moves.some((m) => m.isBeyond),
    size: most.size,
    threshold: whole.threshold,
  };
}

/** What a relative threshold is a share of. */
function unitOf(quantity: QuantityId, before: number, after: number): number {
  const rule = quantityRules[quantity];
  if (!rule?.isRelative) return 1;
  return Math.max(Math.abs(before), Math.abs(after), rule.leastLevel ?? 0) || 1;
}
