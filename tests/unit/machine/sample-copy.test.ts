import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, expect, it } from 'vitest';
import { sampleCopy } from '../../../electron/machine/sample-copy.ts';

let samples: string;
let work: string;

beforeEach(() => {
  samples = mkdtempSync(join(tmpdir(), 'onechange-samples-'));
  work = join(mkdtempSync(join(tmpdir(), 'onechange-work-')), 'sample');
  mkdirSync(join(samples, 'a hatch', 'runs', 'one'), { recursive: true });
  writeFileSync(join(samples, 'a hatch', 'session.json'), '{"name":"A"}');
  writeFileSync(join(samples, 'a hatch', 'runs', 'one', 'source.csv'), 'Time\n1\n');
  mkdirSync(join(samples, '0 no session'));
});

const nameIn = (folder: string): string => readFileSync(join(folder, 'session.json'), 'utf8');

it('the sample is copied whole, and the copy is kept with what was done to it', () => {
  const copy = sampleCopy(samples, work);
  expect(readFileSync(join(copy, 'runs', 'one', 'source.csv'), 'utf8')).toBe('Time\n1\n');
  writeFileSync(join(copy, 'session.json'), '{"name":"worked in"}');
  expect(sampleCopy(samples, work)).toBe(copy);
  expect(nameIn(copy)).toBe('{"name":"worked in"}');
  expect(nameIn(join(samples, 'a hatch'))).toBe('{"name":"A"}');
});

it('a changed sample gets a copy of its own beside the old one', () => {
  const copy = sampleCopy(samples, work);
  writeFileSync(join(samples, 'a hatch', 'session.json'), '{"name":"B"}');
  const next = sampleCopy(samples, work);
  expect([next === copy, nameIn(copy), nameIn(next)]).toEqual([false, '{"name":"A"}', '{"name":"B"}']);
});

it('a copy that was interrupted is not taken for one', () => {
  const copy = sampleCopy(samples, work);
  const version = join(copy, '..');
  // What a kill leaves: the half in its own folder, the copy not there yet.
  expect(readdirSync(version).filter((name) => !name.startsWith('.copy-'))).toEqual(['a hatch']);
});

it('a folder without a session is an error of ours', () => {
  expect(() => sampleCopy(work, work)).toThrow();
});
