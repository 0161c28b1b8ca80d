import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkValues } from '../support/check-values.ts';

/** Published values that no test looks at, by the beginning of their id, and why. */
const notCovered: Record<string, string> = {
  'if97-psat-600K': 'above the range of the vapour pressure; no charge air is that hot',
  'if97-tsat-0.1MPa': 'nothing here turns a pressure into a boiling temperature to that many digits',
  'ashrae-hs-':
    'the balance of the charge sums its own heats; it has no enthalpy of saturated air to compare',
  'ashrae-example-1': 'nothing here reads a wet bulb',
  'standard-pressure-': 'the barometer is typed or logged, never worked out from an altitude',
  'octane-': 'the octane of a blend is told relative to its petrol, by ignition delay',
  'ron-': 'the octane of a blend is told relative to its petrol, by ignition delay',
  'std-': 'the older form of correction is not offered: its own standard could not be read',
  'correction-boosted': 'advice for the reader of a corrected figure, no number to compute',
  'eec-reference': 'a reference state quoted for its constants; that directive is not offered',
  'livengood-wu': 'a definition; the integral itself is checked by livengood-wu-compression',
  'naca-': 'engine tests of another age; their trend is context, our model is relative to a known point',
  'water-octane-cfr': 'a range of ratios without a result',
  draper: 'frequencies of the cavity are not used: knock comes from the log as retard or level',
  'epa-reference-air':
    'the state for which the coefficients hold; the coefficients are checked by epa-roadload',
  'test-weight-bins': 'the mass is the one that was weighed, never a class',
  'mass-factor-gillespie': 'turning parts are counted by their inertia, not by a factor of the ratio',
  'welch-mcdonald': 'the data were not published with the result',
  'studentised-range-': 'several entries are judged with Holm’s adjustment, not with this range',
  'nist-sample-size': 'a bound for a known deviation; ours comes from the pulls (power-, detectable-)',
};

function testFiles(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((e) => {
    const path = join(folder, e.name);
    if (e.isDirectory()) return testFiles(path);
    return /\.test\.tsx?$/.test(e.name) && e.name !== 'coverage.test.ts' ? [path] : [];
  });
}

/** Whole ids, and beginnings that end in a hyphen, as the tests write them: in quotes, templates or patterns. */
function namesIn(source: string): string[] {
  const quoted = [...source.matchAll(/['`]([a-zA-Z0-9][\w.+-]*?)(?:\$\{|['`])/g)].map((m) => m[1] ?? '');
  const patterns = [...source.matchAll(/\/\^([a-z0-9-]+)/g)].map((m) => m[1] ?? '');
  return [...quoted, ...patterns];
}

const tests = ['../reference', '../unit']
  .flatMap((f) => testFiles(join(import.meta.dirname, f)))
  .map((path) => readFileSync(path, 'utf8'))
  .filter((text) => /support\/(check-values|published)\.ts/.test(text));
const names = new Set(tests.flatMap(namesIn));
const isNamed = (id: string) =>
  names.has(id) ||
  [...names].some((n) => n.length >= 2 && /[-\d]$|^t9$/.test(n) && id !== n && id.startsWith(n));
const reasonFor = (id: string) =>
  Object.keys(notCovered).find(
    (k) => id === k || (k.endsWith('-') && id.startsWith(k)) || id.startsWith(`${k}-`),
  );

describe('the list of published values', () => {
  it('is looked at whole: each is named by a test or stands here with its reason', () => {
    expect(checkValues.length).toBeGreaterThan(400);
    const lost = checkValues.filter((v) => !isNamed(v.id) && !reasonFor(v.id)).map((v) => v.id);
    expect(lost).toEqual([]);
  });

  it('has no reason left over for a value that is gone or is checked', () => {
    const needless = Object.keys(notCovered).filter(
      (k) => !checkValues.some((v) => reasonFor(v.id) === k && !isNamed(v.id)),
    );
    expect(needless).toEqual([]);
  });
});
