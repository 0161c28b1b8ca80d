import { fluidUsed, type Setup } from '../injection/index.ts';
import { channelOf } from '../log/index.ts';
import { fromSi } from '../units/index.ts';
import type { Analyses } from './entry-pulls.ts';
import type { Session } from './session.ts';

/** Fluid that the logs themselves show: all pulls together [m^3], and how many they are. */
export type LoggedFluid = {
  readonly fluid: number;
  readonly pulls: number;
  /** The entry that they belong to. */
  readonly entryId: string;
};

/** Less than this over a pull is a sensor that sits a little off zero, not a spray [m^3]. */
const trickle = 1e-6;

/**
 * Fluid of the pulls that count, from the flow channel of their logs; of the newest entry that sprayed, as an
 * older one ran other points.
 *
 * @returns  null where no log of the session has a flow that is more than a trickle
 */
export function loggedFluid(session: Session, analyses: Analyses): LoggedFluid | null {
  for (const entry of [...session.ledger].reverse()) {
    let [fluid, pulls] = [0, 0];
    for (const part of entry.runs) {
      const analysis = analyses.get(part.runId);
      const flow = analysis && channelOf(analysis.log, 'fluidFlow');
      if (!analysis || !flow) continue;
      for (const { pull, counts } of analysis.pulls) {
        const isPart =
          pull.start_s >= (part.from_s ?? Number.NEGATIVE_INFINITY) &&
          pull.start_s <= (part.to_s ?? Number.POSITIVE_INFINITY);
        if (!counts || !isPart) continue;
        const used = fluidUsed(analysis.log.time, flow.values, pull.from, pull.to);
        if (used < trickle) continue;
        fluid += used;
        pulls += 1;
      }
    }
    if (pulls > 0) return { fluid, pulls, entryId: entry.id };
  }
  return null;
}

/** The setup with what the logs show in it; what somebody typed there stays. */
export function withLoggedFluid(setup: Setup, logged: Pick<LoggedFluid, 'fluid' | 'pulls'> | null): Setup {
  if (logged === null || setup.fluidSystem.logged !== null) return setup;
  return {
    ...setup,
    fluidSystem: {
      ...setup.fluidSystem,
      logged: { fluid_mL: fromSi(logged.fluid, 'mL'), pulls: logged.pulls },
    },
  };
}
