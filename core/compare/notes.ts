import type { QuantityId } from '../log/index.ts';
import type { CorrectionStandard, PullPower } from '../power/index.ts';
import type { ChangeKind } from './verdict.ts';

export type Side = 'before' | 'after';

/** A pull as a person finds it again: its side and its place there, counted from 1. */
type PullFacts = { pullId: string; side: Side; place: number };

/** Why two entries can't be compared, why it stays open, and what is worth saying beside. Facts are SI. */
declare module '../result/result.ts' {
  interface NoteFacts {
    'compare/no-pulls': { side: Side };
    'compare/same-pull': Record<string, never>;
    'compare/other-gear': { before: number; after: number };
    /** No numbers known: engine speed over road speed after over before, less one. */
    'compare/other-gear-by-speeds': { share: number };
    /** Neither a gear's number nor both speeds in every pull. */
    'compare/gear-open': Record<string, never>;
    'compare/other-basis': { before: PullPower['basis']; after: PullPower['basis'] };
    'compare/other-correction': { before: CorrectionStandard; after: CorrectionStandard };
    'compare/other-mass': { before_kg: number; after_kg: number };
    /** Engine speed over road speed stands at another ratio: tyre, pressure or slip. */
    'compare/other-rolling': { share: number };
    'compare/other-direction': Record<string, never>;
    'compare/no-common-band': Record<string, never>;
    /** Effect of the air on power between the sides, as a share, by the usual correction. */
    'compare/weather-apart': { share: number };
    'compare/weather-beyond': { share: number };
    'compare/also-moved': { quantity: QuantityId; delta: number; half: number; declared: ChangeKind };
    'compare/more-than-one': { quantities: readonly QuantityId[] };
    'compare/declared-missing': {
      quantity: QuantityId;
      delta: number;
      half: number;
      size: number | null;
      kind: ChangeKind;
    };
    'compare/knock-retard': { before: number; after: number };
    'compare/knock-events': { before: number; after: number };
    'compare/limiter': { side: Side; pulls: number };
    'compare/intervention': { side: Side; pulls: number };
    'compare/wheel-spin': { side: Side; pulls: number };
    'compare/intake-apart': { delta: number };

    'compare/one-pull': Record<string, never>;
    'compare/no-repeatability': Record<string, never>;
    'compare/open': { low: number; high: number; margin: number };

    'compare/left-out-incomplete': PullFacts;
    'compare/left-out-no-power': PullFacts;
    'compare/left-out-short': PullFacts;
    'compare/left-out-gear': PullFacts & { gear: number };
    /** Its engine speed over road speed over that of the pulls that count, less one. */
    'compare/left-out-gear-by-speeds': PullFacts & { share: number };
    'compare/left-out-twice': PullFacts;
    'compare/left-out-knock': PullFacts & { retard_rad: number };
    'compare/left-out-spin': PullFacts;
    'compare/left-out-limiter': PullFacts;
    'compare/left-out-intervention': PullFacts;
    /** Stands away from its fellows by this share of power. */
    'compare/left-out-outlier': PullFacts & { share: number };

    'compare/intake-corrected': { delta: number; correction: number; half: number };
    /** Relative difference of absolute manifold pressure, too small to be another setting. */
    'compare/boost-corrected': { share: number; correction: number; half: number };
    'compare/drift-corrected': { perPull: number; correction: number };
    /** No setup was driven twice, so that a drifting day can't be told from a change. */
    'compare/drive-again': { entries: number };
    'compare/directions-averaged': Record<string, never>;
    'compare/weather-widened': { share: number };
    'compare/prior-used': { deviationShare: number; degrees: number };
    'compare/prior-refused': { deviationShare: number; foundShare: number };
    'compare/pooled': { entries: number; degrees: number };
    'compare/own-repeatability': { ownShare: number; sessionShare: number };
    'compare/own-scatter': { beforeShare: number; afterShare: number };
    'compare/single-pull-side': { side: Side };
    'compare/band-cut': { asked: readonly [number, number]; used: readonly [number, number] };
    /** Below, boost was still coming up; [rad/s], used and covered. */
    'compare/from-spooled': { from: number; covered: number };
    /** A channel of something that is set, logged on the other side alone. */
    'compare/witness-lost': { quantity: QuantityId; side: Side };
    'compare/small-but-real': { effect: number; half: number };
    'compare/declared-unseen': { kind: ChangeKind };
    'compare/declared-partly': { quantity: QuantityId; size: number; delta: number; retard: number | null };
    'compare/moved-named': { quantity: QuantityId; delta: number };
    'compare/knock-heard': { before: number; after: number };
  }
}

export type { PullFacts };
