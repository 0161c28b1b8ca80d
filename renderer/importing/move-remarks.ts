import type { Session } from '../../core/session/index.ts';
import type { Target } from './assign-files.ts';
import { type LogPlace, targetOf } from './log-places.ts';

type Words = {
  readonly nameOf: (entryId: string) => string;
  readonly emptied: (entry: string) => string;
  readonly already: (log: string, entry: string) => string;
};

/** What a move means besides: entries that are left without a log, and logs that are there already. */
export function moveRemarks(
  ledger: Session['ledger'],
  places: readonly LogPlace[],
  targets: readonly Target[],
  { nameOf, emptied, already }: Words,
): string[] {
  const moved = places.flatMap((place, i) => {
    const target = targets[i] ?? targetOf(place);
    return target === targetOf(place) ? [] : [{ ...place, target }];
  });
  const isLeft = (entryId: string, runId: string) =>
    moved.some((m) => m.entryId === entryId && m.runId === runId);
  const empty = ledger.filter(
    (e) =>
      e.runs.length > 0 &&
      e.runs.every((r) => isLeft(e.id, r.runId)) &&
      !moved.some((m) => m.target === e.id),
  );
  const doubled = moved.filter(({ runId, target }) =>
    ledger.some((e) => e.id === target && e.runs.some((r) => r.runId === runId)),
  );
  return [
    ...doubled.map((m) => already(m.name, nameOf(m.target))),
    ...empty.map((e) => emptied(nameOf(e.id))),
  ];
}
