import type { Standing } from './standing.ts';

/** A clear loss by spray alone is over-feed; less is its price (common practice: nothing, or a little less). */
export const overFeedLoss = 0.02;

/** The spray was driven, kept, its flow not refused by a gate, and no clear loss came of it. */
export function isSprayProven(standing: Standing): boolean {
  const { spray } = standing;
  if (!spray) return false;
  return !(spray.verdict?.kind === 'loss' && (spray.verdict.effectShare ?? 0) < -overFeedLoss);
}
