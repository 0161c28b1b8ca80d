import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { superfluous, type Version } from '../../../electron/store/history.ts';
import { closeSession } from '../../../electron/store/index.ts';
import { isBitDamage, openSealed, sealedText } from '../../../electron/store/seal.ts';
import { newSessionFolder, opened } from '../../support/store-session.ts';

const seal = { revision: 7, savedAt: '2027-03-14T10:00:00.000Z' };
const bytesOf = (text: string) => new TextEncoder().encode(text);

describe('a sealed file', () => {
  it('comes back as it went in, with its seal, whatever it holds', () => {
    const content = fc.dictionary(fc.string(), fc.jsonValue());
    fc.assert(
      fc.property(content, ({ seal: _, ...value }) => {
        const read = openSealed(bytesOf(sealedText(value, seal)));
        expect(read).toEqual({ json: JSON.parse(JSON.stringify(value)), seal, hasSeal: true });
      }),
      { seed: 3 },
    );
  });

  it('is a text that a person can read, with the seal as its last key', () => {
    expect(sealedText({ note: 'windy', seal: 'old' }, seal)).toMatch(
      /^\{\n {2}"note": "windy",\n {2}"seal": \{\n {4}"revision": 7,\n {4}"savedAt": ".*",\n {4}"sha256": "[0-9a-f]{64}"\n {2}\}\n\}\n$/,
    );
  });

  it('is broken by a change of any byte', () => {
    const good = bytesOf(sealedText({ note: 'windy', zeros: '0'.repeat(64) }, seal));
    for (let at = 0; at < good.length; at++) {
      const bad = good.slice();
      bad[at] = (bad[at] ?? 0) ^ 1;
      expect(openSealed(bad)?.seal ?? null).toBeNull();
    }
  });

  it('stays whole when version control turns its line ends', async () => {
    const folder = await newSessionFolder();
    const path = join(folder, 'session.json');
    await writeFile(path, (await readFile(path, 'utf8')).replaceAll('\n', '\r\n'));
    const open = await opened(folder);
    expect(open.notices).toEqual([]);
    await closeSession(open);
  });

  it.each([
    ['a byte order mark and no seal', '\ufeff{"a":1}', { json: { a: 1 }, seal: null, hasSeal: false }],
    ['a seal of another shape', '{"a":1,"seal":5}', { json: { a: 1 }, seal: null, hasSeal: true }],
    ['a list', '[]', null],
    ['nothing', '', null],
    ['a bare word', 'true', null],
  ])('%s', (_, text, expected) => expect(openSealed(bytesOf(text))).toEqual(expected));

  it('that is no UTF-8 is not read', () => {
    expect(openSealed(Uint8Array.of(0x7b, 0x22, 0xff, 0x22, 0x3a, 0x31, 0x7d))).toBeNull();
  });
});

describe('damage and edits by hand', () => {
  it.each([
    ['one bit', '{"boost": 14}', '{"boost": 15}', true],
    ['a bit in each of two bytes', 'ab', 'cc', true],
    ['two bits of one byte', 'a', 'b', false],
    ['bits of a letter', '{"note": "dry"}', '{"note": "wet"}', false],
    ['another length', '{"boost": 14}', '{"boost": 14.5}', false],
    ['nothing', 'x', 'x', false],
  ])('%s: %s and %s', (_, a, b, expected) => expect(isBitDamage(bytesOf(a), bytesOf(b))).toBe(expected));
});

describe('history', () => {
  const version = (revision: number, stamp: string, isOriginal = false): Version => ({
    name: `${revision}`,
    revision,
    stamp,
    hash: '',
    isOriginal,
  });

  it('keeps the newest thirty, the last of each earlier day, and every original', () => {
    const versions: Version[] = [];
    for (let day = 1; day <= 3; day++) {
      for (let n = 0; n < 25; n++) {
        versions.unshift(version(day * 100 + n, `2027031${day}T1000${n + 10}Z`, day === 1 && n === 0));
      }
    }
    const gone = superfluous(versions).map((v) => v.revision);
    expect(versions.length - gone.length).toBe(30 + 1 + 1);
    expect(gone).not.toContain(100);
    expect(gone).not.toContain(124);
    expect(gone).toContain(123);
    expect(Math.max(...gone)).toBeLessThan(300);
  });

  it('is not confused by a clock that goes backwards', () => {
    const versions = Array.from({ length: 40 }, (_, i) => version(40 - i, `202703${10 + (i % 20)}T100000Z`));
    expect(superfluous(versions).every((v) => v.revision <= 10)).toBe(true);
  });
});
