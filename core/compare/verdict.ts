import type { QuantityId } from '../log/index.ts';
import type { Note } from '../result/index.ts';

export const verdictKinds = ['gain', 'loss', 'equivalent', 'undecided', 'not-comparable'] as const;
export type VerdictKind = (typeof verdictKinds)[number];

/** What the tuner says was changed; `nothing` is an earlier entry driven again. */
export const changeKinds = ['spray', 'boost', 'spark', 'mixture', 'fluid', 'other', 'nothing'] as const;
export type ChangeKind = (typeof changeKinds)[number];

export type WitnessRole =
  | 'declared-happened'
  | 'declared-missing'
  | 'follows'
  | 'steady'
  | 'corrected'
  | 'moved';

/** One channel before and after, over the common band, in SI; after minus before. */
export type Witness = {
  readonly quantity: QuantityId;
  readonly before: number;
  readonly after: number;
  readonly delta: number;
  readonly interval95: readonly [number, number];
  readonly declared: boolean;
  readonly role: WitnessRole;
  readonly remark: Note | null;
};

/** After minus before over a common engine-speed grid; all arrays one length. Powers in W at the wheel. */
export type DifferenceCurve = {
  readonly engineSpeed_rad_s: Float64Array;
  readonly before: Float64Array;
  readonly after: Float64Array;
  /** Half width of each side's own 95 % band of the mean. */
  readonly beforeHalf: Float64Array;
  readonly afterHalf: Float64Array;
  readonly delta: Float64Array;
  /** Simultaneous 95 % band: the whole true curve lies inside with 95 % confidence. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** Half-open index ranges in which the band excludes zero. */
  readonly proven: readonly { readonly from: number; readonly to: number; readonly sign: 1 | -1 }[];
};

/** What the comparison of two entries proved. Effect is after minus before, wheel power [W]. */
export type Verdict = {
  readonly kind: VerdictKind;
  readonly effect: number | null;
  readonly interval95: readonly [number, number] | null;
  /** Effect over the mean before, as a share. */
  readonly effectShare: number | null;
  readonly band_rad_s: readonly [number, number] | null;
  readonly pullsBefore: number;
  readonly pullsAfter: number;
  /** Further pulls on each side that would decide it; null where it is decided or no number would. */
  readonly morePulls: number | null;
  /** Smallest effect [W] that could be seen now with four chances in five; null where unknown. */
  readonly smallestSeen: number | null;
  /** Standard deviation of one pull [W] and its degrees of freedom. */
  readonly repeatability: { readonly deviation: number; readonly degrees: number } | null;
  /** The share of power under which two settings count as equal. */
  readonly margin: number;
  /** Mean wheel power before, over the band [W]; null where nothing could be reckoned. */
  readonly meanBefore: number | null;
  /** Why the two can't be compared, or why it stays open. */
  readonly reasons: readonly Note[];
  /** What is worth saying and stops nothing: pulls left out, corrections made, what rests on practice. */
  readonly remarks: readonly Note[];
  readonly witnesses: readonly Witness[];
  readonly curve: DifferenceCurve | null;
};
