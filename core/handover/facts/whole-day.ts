import { type DifferenceCurve, provenRanges, type Verdict } from '../../compare/index.ts';
import type { Note } from '../../result/index.ts';

/** The first measurement against the car as left. */
export type WholeDay = {
  readonly beforeId: string;
  readonly afterId: string;
  readonly curve: DifferenceCurve | null;
  /** What stood otherwise on the two sides beside the tuner's changes; with one of them nothing is called proven. */
  readonly doubts: readonly Note[];
};

/**
 * A verdict proves nothing where several things moved, since nobody can say which of them did it. How far the car
 * now stands from where it began asks for no cause, so here the band proves it all the same; every other reason holds.
 */
export function wholeCurve({
  kind,
  curve,
  reasons,
}: Pick<Verdict, 'kind' | 'curve' | 'reasons'>): Pick<WholeDay, 'curve' | 'doubts'> {
  if (kind !== 'not-comparable') return { curve, doubts: [] };
  const doubts = reasons.filter((r) => r.code !== 'compare/more-than-one');
  if (!curve || doubts.length > 0) return { curve, doubts };
  return { curve: { ...curve, proven: provenRanges(curve.low, curve.high) }, doubts };
}
