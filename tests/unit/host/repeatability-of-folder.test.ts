import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { askingHost } from '../../support/asking-host.ts';
import { contentsOf } from '../../support/folder-contents.ts';
import { manyPullsSession } from '../../support/many-pulls-session.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';

let place: ReturnType<typeof temporaryFolder>;
let earlier: string;

beforeAll(async () => {
  place = temporaryFolder();
  earlier = await manyPullsSession(place.folder, 'earlier');
});
afterAll(() => place.remove());

describe('how well pulls repeated in another folder', () => {
  it('is told without writing to it, and what leans on it says so and can be undone', async () => {
    const asking = askingHost(place.folder);
    const before = await contentsOf(earlier);
    const told = await asking.get('sessions.repeatability', { folder: earlier });
    expect(await contentsOf(earlier)).toEqual(before);
    expect(told).toMatchObject({ sessionId: 'earlier', carName: 'Invented' });
    // Pulls were invented with a scatter of 0.6 %; 24 in two entries.
    expect(told.repeatability?.deviationShare).toBeGreaterThan(0.003);
    expect(told.repeatability?.deviationShare).toBeLessThan(0.009);

    await asking.get('sessions.create', { name: 'Today', car: { mass_kg: 1400 } });
    const leansOn = { sessionId: told.sessionId, name: told.name, deviation_percent: 0.6, degrees: 20 };
    await asking.get('session.edit', { edits: [{ type: 'leaning.set', leansOn }] });
    expect((await asking.snapshot()).session.leansOn).toEqual(leansOn);
    await asking.get('session.undo', {});
    expect((await asking.snapshot()).session.leansOn).toBeNull();
    await asking.host.close();
  });

  it('names what stands in the way where the folder is no session', async () => {
    const asking = askingHost(place.folder);
    expect(await asking.codeOf('sessions.repeatability', { folder: place.folder })).toBe(
      'store/not-a-session',
    );
    await asking.host.close();
  });
});
