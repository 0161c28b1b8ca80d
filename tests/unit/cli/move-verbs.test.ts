import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import { main } from '../../../electron/cli/main.ts';
import { closeSession, openSession, saveSession, sha256 } from '../../../electron/store/index.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';

const now = '2027-03-14T12:00:00.000Z';
let place: ReturnType<typeof temporaryFolder>;
let folder: string;

beforeEach(async () => {
  place = temporaryFolder();
  folder = join(place.folder, 'Fenmoor');
  const car = join(place.folder, 'car.json');
  writeFileSync(car, '{"mass_kg": 1320}');
  expect((await call('new', folder, '--car', car)).code).toBe(0);
});
afterEach(() => place.remove());

async function call(...words: string[]): Promise<{ code: number; out: string }> {
  let out = '';
  const write = (text: unknown) => {
    out += String(text);
    return true;
  };
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation(write),
    vi.spyOn(process.stderr, 'write').mockImplementation(write),
  ];
  try {
    return { code: await main(words), out };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

async function note(at: string, text: string): Promise<void> {
  const open = unwrap(await openSession(at, { now }));
  unwrap(await saveSession(open, { ...open.session, note: text }, now));
  unwrap(await closeSession(open));
}
const noteIn = (at: string) => JSON.parse(readFileSync(join(at, 'session.json'), 'utf8')).note;

describe('onechange pack and unpack', () => {
  it('show the same checksum at both ends', async () => {
    await note(folder, 'windy');
    const zip = join(place.folder, 'stick.zip');
    const packed = await call('pack', folder, '--out', zip);
    const sum = sha256(readFileSync(zip));
    expect([packed.code, packed.out.includes(sum)]).toEqual([0, true]);
    const there = join(place.folder, 'there');
    mkdirSync(there);
    const unpacked = await call('unpack', zip, '--into', there);
    expect([unpacked.code, unpacked.out.includes(sum)], unpacked.out).toEqual([0, true]);
    expect(unpacked.out).toMatch(/(\d+) of \1 files fit the SHA-256 sums/);
    expect(noteIn(join(there, basename(folder)))).toBe('windy');
  });

  it('refuse what is damaged, what is there already, and what is missing', async () => {
    const zip = join(place.folder, 'stick.zip');
    await call('pack', folder, '--out', zip);
    const again = await call('pack', folder, '--out', zip, '--json');
    expect([again.code, JSON.parse(again.out).error.code]).toEqual([2, 'store/already-there']);
    const bytes = readFileSync(zip);
    writeFileSync(zip, bytes.subarray(0, bytes.length - 30));
    const cut = await call('unpack', zip, '--into', place.folder, '--json');
    expect([cut.code, JSON.parse(cut.out).error.code]).toEqual([2, 'store/not-a-zip']);
    expect((await call('unpack')).out).toContain('Usage: onechange unpack');
  });
});

describe('onechange merge', () => {
  it('lists what both changed with both values, and settles it by number', async () => {
    await note(folder, 'morning');
    const copy = join(place.folder, 'copy');
    cpSync(folder, copy, { recursive: true });
    await note(folder, 'mine');
    await note(copy, 'theirs');
    const merged = await call('merge', folder, copy);
    expect(merged.code, merged.out).toBe(0);
    expect(merged.out).toMatch(/1\. Note\n\s+here: mine\n\s+copy: theirs\n\s+now: here stands/);
    expect((await call('merge', folder, '--theirs', '1')).out).toContain('now: the copy’s stands');
    expect(noteIn(folder)).toBe('theirs');
    await call('merge', folder, '--mine', '1');
    expect(noteIn(folder)).toBe('mine');
    const wrong = await call('merge', folder, '--theirs', '7', '--json');
    expect([wrong.code, JSON.parse(wrong.out).error.code]).toEqual([2, 'terminal/not-a-choice']);
    const json = JSON.parse((await call('merge', folder, '--json')).out);
    expect(json.conflicts).toMatchObject([
      { path: 'note', mine: '"mine"', theirs: '"theirs"', stands: 'mine' },
    ]);
  });
});

describe('onechange check --accept', () => {
  it('takes an edit by hand that looked like damage, and says so where there is none', async () => {
    await note(folder, 'three');
    const path = join(folder, 'session.json');
    writeFileSync(path, readFileSync(path, 'utf8').replace('"note": "three"', '"note": "thrde"'));
    const accepted = await call('check', folder, '--accept');
    expect(accepted.out).toMatch(/Taken from set-aside\/\S+-session\.json: note\./);
    expect(noteIn(folder)).toBe('thrde');
    expect(existsSync(join(folder, 'set-aside'))).toBe(true);
    const other = join(place.folder, 'Other');
    await call('new', other, '--car', join(place.folder, 'car.json'));
    const none = await call('check', other, '--accept', '--json');
    expect([none.code, JSON.parse(none.out).error.code]).toEqual([2, 'store/no-version']);
  });
});
