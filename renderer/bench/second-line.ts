import type { Snapshot, VerdictWire } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import type { Words } from '../hooks/use-words.tsx';

/** What the verdict rests on: pulls, gear, what else moved, what would decide it. */
export function secondLine(verdict: VerdictWire, snapshot: Snapshot, after: Entry, words: Words): string {
  const { screens, note, quantity } = words;
  const said = screens.bench;
  const gear = gearOf(snapshot, after);
  const pulls = said.pullsAgainst(verdict.pullsAfter, verdict.pullsBefore);
  const parts = [`${pulls}${gear === null ? '' : `, ${said.gear(gear)}`}.`];
  if (verdict.kind === 'not-comparable') return [...verdict.reasons.map(note), ...parts].join(' ');
  const moved = verdict.witnesses.filter((w) => w.role === 'moved').map((w) => quantity(w.quantity));
  parts.push(moved.length === 0 ? said.nothingElse : said.alsoMoved(moved.join(', ')));
  return parts.join(' ');
}

/** The gear that all counted pulls of an entry share; null where they differ or nobody knows. */
export function gearOf(snapshot: Snapshot, entry: Entry): number | null {
  const runIds = new Set(entry.runs.map((r) => r.runId));
  const gears = new Set(
    snapshot.runs
      .filter((r) => runIds.has(r.record.id))
      .flatMap((r) => r.pulls.filter((p) => p.counts).map((p) => p.gear)),
  );
  const [only] = gears;
  return gears.size === 1 && only !== undefined ? only : null;
}
