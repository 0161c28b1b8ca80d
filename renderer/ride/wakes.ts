import type { Cue } from './cue.ts';
import type { RideGate } from './gate-words.ts';

/** What the ride view knew when it last looked; null before the first look. */
export type Seen = {
  readonly entryId: string;
  readonly pulls: number;
  readonly gates: readonly RideGate[];
};

export type Wake = { readonly cue: Cue; readonly gate: RideGate | null };

const isLow = (gate: RideGate | undefined) => gate?.state === 'near' || gate?.state === 'closed';

/**
 * What is worth a passenger's attention since the last look, the gravest first: a gate that has closed, fluid that
 * runs low, a new pull. Anything else leaves the view silent, and so does the first look.
 */
export function wakesBetween(before: Seen | null, now: Seen): Wake[] {
  if (!before) return [];
  const old = before.entryId === now.entryId ? before.gates : [];
  const was = (gate: RideGate) => old.find((g) => g.quantity === gate.quantity);
  const closed = now.gates.filter(
    (g) => g.quantity !== 'fluidLeft' && g.state === 'closed' && was(g)?.state !== 'closed',
  );
  const fluid = now.gates.filter((g) => g.quantity === 'fluidLeft' && isLow(g) && !isLow(was(g)));
  return [
    ...closed.map((gate): Wake => ({ cue: 'gate', gate })),
    ...fluid.map((gate): Wake => ({ cue: 'fluid', gate })),
    ...(now.pulls > before.pulls ? [{ cue: 'pull', gate: null } satisfies Wake] : []),
  ];
}
