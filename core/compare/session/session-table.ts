import type { Note } from '../../result/index.ts';
import type { ChangeDeclaration, EntryPulls } from '../judge-input.ts';
import type { ChangeKind, Verdict } from '../verdict.ts';

/** A ledger entry with its pulls. */
export type SessionEntry = EntryPulls & {
  /** The entry it is judged against; null for the baseline. */
  readonly against: string | null;
  /** Null for the baseline, or where nobody said. */
  readonly declared: ChangeDeclaration | null;
  /** A dropped entry is judged all the same; the next change stands on the last kept one. */
  readonly isKept: boolean;
};

export type SessionLine = {
  readonly entryId: string;
  readonly againstId: string | null;
  readonly pulls: number;
  /** Mean wheel power over the session's band with half its 95 % interval [W]. */
  readonly level: { readonly mean: number; readonly half: number | null } | null;
  /** Null for the baseline and for an entry without pulls. */
  readonly verdict: Verdict | null;
  /** p of the verdict's statement after Holm's adjustment over all lines; null where it states none. */
  readonly adjustedP: number | null;
  /** Whether the statement still stands, at 5 % for all of them together. */
  readonly standsAdjusted: boolean;
};

/** Steps of one kind together, or those that can't be judged as the step they were meant to be. */
export type LadderPart = {
  readonly kind: ChangeKind | 'not-judged';
  readonly entryIds: readonly string[];
  readonly effect: number;
  readonly interval95: readonly [number, number];
};

/** From the baseline to the last kept entry [W at the wheel]; the parts add up to the whole. */
export type Ladder = {
  readonly fromId: string;
  readonly toId: string;
  readonly effect: number;
  readonly interval95: readonly [number, number];
  readonly band_rad_s: readonly [number, number];
  readonly parts: readonly LadderPart[];
};

export type SessionTable = {
  readonly lines: readonly SessionLine[];
  readonly ladder: Ladder | null;
  /** Share of power a pull, where an earlier entry was driven again; null where none was. */
  readonly drift: { readonly perPull: number; readonly interval95: readonly [number, number] } | null;
  /** Repeatability of one pull as a share of power, to lean on in the next session. */
  readonly repeatability: { readonly deviationShare: number; readonly degrees: number } | null;
  readonly notes: readonly Note[];
};
