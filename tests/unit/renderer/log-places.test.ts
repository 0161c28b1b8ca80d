import { describe, expect, it } from 'vitest';
import type { Snapshot } from '../../../core/contract/index.ts';
import { emptyDraft } from '../../../renderer/entry/change-draft.ts';
import { newChange, noEntry } from '../../../renderer/importing/assign-files.ts';
import { logPlaces, placeEdits, waitingRuns } from '../../../renderer/importing/log-places.ts';
import { moveRemarks } from '../../../renderer/importing/move-remarks.ts';

const run = (id: string, name: string, size_bytes: number) => ({ record: { id, name, size_bytes } });
const part = (runId: string) => ({ runId, from_s: null, to_s: null });
const snapshot = {
  session: {
    ledger: [
      { id: 'e0', runs: [part('r1')] },
      { id: 'e1', runs: [part('r2'), part('r1')] },
    ],
  },
  runs: [
    run('r1', 'a.csv', 10),
    run('r2', 'b.csv', 10),
    run('r3', 'b.csv', 5),
    run('r4', 'b.csv', 20),
    run('r5', 'c.csv', 5),
  ],
} as unknown as Snapshot;
const { ledger } = snapshot.session;
const said = {
  nameOf: (id: string) => id,
  emptied: (entry: string) => `${entry} empty`,
  already: (log: string, entry: string) => `${log} in ${entry}`,
};

describe('where logs stand', () => {
  it('those in no entry come first, and a log in two entries comes twice', () => {
    expect(logPlaces(snapshot, null).map((p) => [p.runId, p.entryId])).toEqual([
      ['r3', null],
      ['r4', null],
      ['r5', null],
      ['r1', 'e0'],
      ['r2', 'e1'],
      ['r1', 'e1'],
    ]);
    expect(logPlaces(snapshot, 'r1')).toHaveLength(2);
  });

  it('the shorter copy of a log that counts waits for no entry', () => {
    expect(waitingRuns(snapshot)).toEqual(['r4', 'r5']);
  });

  it('a choice becomes an edit only where it moves something', () => {
    const places = logPlaces(snapshot, 'r1');
    expect(placeEdits(places, ['e0', 'e1'], emptyDraft).edits).toEqual([]);
    expect(placeEdits(places, ['e1', noEntry], emptyDraft).edits).toEqual([
      { type: 'entry.moveRun', entryId: 'e0', runId: 'r1', to: 'e1' },
      { type: 'entry.leaveRun', entryId: 'e1', runId: 'r1' },
    ]);
    const { edits, newId } = placeEdits(logPlaces(snapshot, 'r5'), [newChange], emptyDraft);
    expect(edits).toMatchObject([
      { type: 'entry.add', entry: { id: newId } },
      { type: 'entry.takeRun', entryId: newId, runId: 'r5' },
    ]);
  });

  it('an entry that loses its last log and one that holds it already are told', () => {
    const places = logPlaces(snapshot, 'r1');
    expect(moveRemarks(ledger, places, ['e1', 'e1'], said)).toEqual(['a.csv in e1', 'e0 empty']);
    expect(moveRemarks(ledger, places, ['e0', 'e1'], said)).toEqual([]);
  });
});
