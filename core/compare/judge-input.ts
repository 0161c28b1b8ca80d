import type { PullEvidence } from './evidence/pull-evidence.ts';
import type { ChangeKind } from './verdict.ts';

/**
 * What the tuner says was changed. `from` and `to` are SI in the kind's own quantity (boost in Pa gauge, spark
 * in rad, mixture in lambda, fluid in m^3/s); `size` is after minus before where no ends are known.
 */
export type ChangeDeclaration = {
  readonly kind: ChangeKind;
  readonly from: number | null;
  readonly to: number | null;
  readonly size: number | null;
};

/** A declaration with what is known of its size; the size follows from the ends where both are given. */
export function declareChange(
  kind: ChangeKind,
  known: { readonly from?: number | null; readonly to?: number | null; readonly size?: number | null } = {},
): ChangeDeclaration {
  const from = known.from ?? null;
  const to = known.to ?? null;
  return { kind, from, to, size: from !== null && to !== null ? to - from : (known.size ?? null) };
}

/** One entry of the session, as far as repeatability and drift can be learnt from it. */
export type EntryPulls = {
  readonly id: string;
  /** The entry whose setup was driven again here; null for a setup of its own. */
  readonly repeats: string | null;
  readonly pulls: readonly PullEvidence[];
};

/** Repeatability of one pull learnt in earlier sessions of the same car, as a share of power. */
export type RepeatabilityPrior = { readonly deviationShare: number; readonly degrees: number };

export type JudgeInput = {
  readonly before: readonly PullEvidence[];
  readonly after: readonly PullEvidence[];
  /** All entries of the session; before and after are found in it by the pulls' ids. */
  readonly session?: readonly EntryPulls[];
  /** Null: nobody said; then whatever moved is named, if it is one thing. */
  readonly declared: ChangeDeclaration | null;
  /** Share of power under which two settings count as equal; default 0.01. */
  readonly margin?: number;
  /** Engine speeds to average over; default is all that every pull of both sides covers. */
  readonly band_rad_s?: readonly [number, number] | null;
  readonly prior?: RepeatabilityPrior | null;
};
