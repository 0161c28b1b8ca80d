import { expect, it } from 'vitest';
import { keepHandover } from '../../../electron/store/index.ts';
import { SimulatedDisk } from '../../faults/disk/simulated-disk.ts';
import { chanceFrom } from '../../support/chance.ts';

const sheet = new TextEncoder().encode('<!doctype html><title>Fenmoor hatch</title>');

it('a summary that was told as kept is there after any power cut, its new folder too', async () => {
  for (let seed = 1; seed <= 40; seed++) {
    const disk = new SimulatedDisk(chanceFrom(seed));
    disk.plant('/shop/session/session.json', new Uint8Array([1]));
    const kept = await keepHandover('/shop/session', '2027-03-14.html', sheet, disk.fs);
    expect(kept).toEqual({ ok: true, value: 'handover/2027-03-14.html' });
    disk.loseUnflushed();
    expect(await disk.fs.readFile('/shop/session/handover/2027-03-14.html', 1000)).toEqual(sheet);
  }
});

it('one of the same name is replaced', async () => {
  const disk = new SimulatedDisk(chanceFrom(1));
  disk.plant('/shop/session/session.json', new Uint8Array([1]));
  await keepHandover('/shop/session', 'a.html', new Uint8Array([1, 2]), disk.fs);
  await keepHandover('/shop/session', 'a.html', sheet, disk.fs);
  expect(await disk.fs.readFile('/shop/session/handover/a.html', 1000)).toEqual(sheet);
  expect(await disk.fs.list('/shop/session/handover')).toHaveLength(1);
});

it('a session that is gone is said, with the path that was to be written', async () => {
  const disk = new SimulatedDisk(chanceFrom(1));
  const kept = await keepHandover('/shop/session', 'a.html', sheet, disk.fs);
  expect(kept).toEqual({
    ok: false,
    problems: [{ code: 'store/missing', facts: { path: '/shop/session/handover/a.html' } }],
  });
});
