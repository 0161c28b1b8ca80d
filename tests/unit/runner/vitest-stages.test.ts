import { expect, it } from 'vitest';
import { passedOnly } from '../../runner/stage.ts';
import { readVitestReport } from '../../runner/vitest-stages.ts';

it('each folder of one run has its own counts, and one without any test fails', () => {
  const told = { folders: { unit: passedOnly(5), faults: passedOnly(2) }, errors: [] };
  const results = readVitestReport(told, ['unit', 'property', 'faults']);
  expect([...results.keys()]).toEqual(['unit', 'property', 'faults']);
  expect(results.get('unit')).toEqual(passedOnly(5));
  expect(results.get('faults')).toEqual(passedOnly(2));
  expect(results.get('property')?.failures).toEqual(['property: no test was found']);
});

it('an error outside any test fails the run, although every test passed', () => {
  const told = { folders: { unit: passedOnly(5) }, errors: ['an error outside any test'] };
  const failures = [...readVitestReport(told, ['unit']).values()].flatMap((one) => one.failures);
  expect(failures).toEqual(['an error outside any test']);
});
