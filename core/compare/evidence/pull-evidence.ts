import type { QuantityId } from '../../log/index.ts';
import type { Conditions, PullPower } from '../../power/index.ts';
import type { Note } from '../../result/index.ts';

/** Curves on the pull's engine-speed grid, SI, NaN where the channel tells nothing. */
export type WitnessCurves = Readonly<Partial<Record<QuantityId, Float64Array>>>;

/** What happens in a pull rather than along it; null where no channel tells. */
export type PullEvents = {
  /** Knock events counted in the pull. */
  readonly knockEvents: number | null;
  /** Largest spark retard that the engine control pulled, any cylinder, as a positive angle. */
  readonly knockRetard_rad: number | null;
};

/** One pull as the judge sees it: power with everything that was logged beside it. The unit of replication. */
export type PullEvidence = {
  readonly id: string;
  /** The ledger entry that it belongs to; null outside a session. */
  readonly entryId: string | null;
  /** Place in the session's order of driving, one step per pull; drift is reckoned along it. */
  readonly order: number;
  readonly gear: number | null;
  readonly power: PullPower;
  readonly curves: WitnessCurves;
  /** Readings at the first sample of the pull, before boost and spray have their say. */
  readonly start: Readonly<Partial<Record<QuantityId, number>>>;
  readonly events: PullEvents;
  /** What the pull finder had to say of it. */
  readonly flags: readonly Note[];
  readonly isComplete: boolean;
  /** Out and back on a road; null on a dyno or where nobody said. */
  readonly direction: 1 | -1 | null;
  /** Way over ground from the first position to the last, clockwise from north; null where no position is logged. */
  readonly heading_rad?: number | null;
  /** Null where nothing is known of the air. */
  readonly conditions: Conditions | null;
  /** The mass that the power was reckoned with. */
  readonly mass_kg: number | null;
};
