import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readCar } from '../../../electron/cli/files.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';

let place: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  place = temporaryFolder();
});
afterEach(() => place.remove());

async function codeOf(text: string | Uint8Array): Promise<string> {
  const path = join(place.folder, 'car.json');
  writeFileSync(path, text);
  const car = await readCar(path);
  return car.ok ? 'ok' : car.problems[0].code;
}

describe('a car file from a stranger', () => {
  it.each([
    ['numbers without end', '{"mass_kg": 1e999}', 'session/field-invalid'],
    ['a mass of no car', '{"mass_kg": 1e9}', 'session/field-invalid'],
    ['a negative mass', '{"mass_kg": -1}', 'session/field-invalid'],
    ['a number as text', '{"mass_kg": "1300"}', 'session/field-invalid'],
    [
      'a list without end',
      `{"mass_kg": 1, "gearRatios": [${'1,'.repeat(100_000)}1]}`,
      'session/field-invalid',
    ],
    ['a name without end', `{"mass_kg": 1, "name": "${'x'.repeat(1e6)}"}`, 'session/field-invalid'],
    ['a list', '[]', 'session/field-invalid'],
    ['no JSON', 'mass 1300', 'terminal/not-json'],
    ['a picture', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]), 'terminal/not-json'],
    ['nothing', '', 'terminal/not-json'],
  ])('%s is refused with its place', async (_, text, code) => {
    expect(await codeOf(text)).toBe(code);
  });

  it('with a prototype in it changes no other object', async () => {
    const text =
      '{"mass_kg": 1300, "__proto__": {"polluted": true}, "constructor": {"prototype": {"polluted": true}}}';
    expect(await codeOf(text)).toBe('ok');
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it('nested without end is refused before anything goes through it', async () => {
    const deep = `{"mass_kg": 1300, "x": ${'['.repeat(200_000)}${']'.repeat(200_000)}}`;
    expect(await codeOf(deep)).toBe('terminal/not-json');
  });
});
