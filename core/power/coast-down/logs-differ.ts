import type { Note } from '../../result/index.ts';
import type { LoggedRoll } from './coast-down.ts';
import type { RollForce } from './roll-forces.ts';

/** Half of a 99 % interval to half of a 95 % one at the four degrees of freedom that a roll leaves: t 4.60 to 2.78. */
const beyondChance = 1.66;
/** Differences under this share of the force are not worth saying (common practice: the usual margin of a verdict). */
const leastShare = 0.01;

type Apart = { readonly difference: number; readonly half: number };

/**
 * Which two logs differ beyond what their rolls allow: wind turned, another stretch, another mass. Rolls the same way are
 * compared; where both ways tell, it is said whether the ways moved alike or against each other. Null where none do.
 *
 * @param forces  of the rolls, in their order
 * @param usual   the road load in the middle of the rolls [N]
 */
export function logsDiffer(
  rolls: readonly LoggedRoll[],
  forces: readonly (RollForce | null)[],
  usual: number,
): Note | null {
  const logs = [...new Set(rolls.map((r) => r.log))];
  const ways = [1, -1] as const;
  const level = (log: LoggedRoll['log'], way: 1 | -1) =>
    meanOf(forces.filter((_, i) => rolls[i]?.log === log && (rolls[i]?.way ?? 1) === way));
  let found: { share: number; note: Note } | null = null;
  for (const [i, log] of logs.entries()) {
    for (const other of logs.slice(i + 1)) {
      const [out, back] = ways.map((way) => apart(level(log, way), level(other, way)));
      const clear = [out, back].filter((d): d is Apart => d != null && isClear(d, usual));
      const [most] = [...clear].sort((a, b) => Math.abs(b.difference) - Math.abs(a.difference));
      if (!most) continue;
      const share = Math.abs(most.difference) / most.half;
      if (found && found.share >= share) continue;
      const kind =
        !out || !back || clear.length < 2
          ? 'one-way'
          : out.difference * back.difference > 0
            ? 'alike'
            : 'against';
      found = {
        share,
        note: {
          code: 'power/coast-down-logs-differ',
          facts: { file: log.file, other: other.file, force: most.difference, half: most.half, kind },
        },
      };
    }
  }
  return found?.note ?? null;
}

/** Mean of some rolls with half of its 95 % interval; how far they lie apart counts where that is the larger. */
function meanOf(
  forces: readonly (RollForce | null)[],
): { readonly force: number; readonly half: number } | null {
  const told = forces.filter((f) => f !== null);
  const n = told.length;
  if (n === 0) return null;
  const force = told.reduce((sum, f) => sum + f.force, 0) / n;
  const apartBy = Math.max(...told.map((f) => Math.abs(f.force - force)));
  return { force, half: Math.max(Math.hypot(...told.map((f) => f.half)) / n, apartBy) };
}

function apart(a: ReturnType<typeof meanOf>, b: ReturnType<typeof meanOf>): Apart | null {
  return a && b && { difference: b.force - a.force, half: Math.hypot(a.half, b.half) };
}

function isClear({ difference, half }: Apart, usual: number): boolean {
  return Math.abs(difference) > Math.max(beyondChance * half, leastShare * usual);
}
