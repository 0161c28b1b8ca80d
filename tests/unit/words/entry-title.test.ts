import { describe, expect, it } from 'vitest';
import { imperialUnits, metricUnits } from '../../../core/units/index.ts';
import { createShow, entryTitle } from '../../../core/words/index.ts';

const en = createShow('en', metricUnits);
const de = createShow('de', metricUnits);
const psi = createShow('en', imperialUnits);
const change = (
  from: { value: number; unit: string } | null,
  to: { value: number; unit: string } | null,
  where = '',
) => ({ from, to, where });

describe('the title of an entry', () => {
  it('says the change in the reader’s units and language', () => {
    const entry = {
      kind: 'boost' as const,
      title: '',
      change: change({ value: 1.15, unit: 'bar' }, { value: 1.3, unit: 'bar' }),
    };
    expect(entryTitle(entry, en)).toBe('Boost 1.15 to 1.30\u00a0bar\u00a0g');
    expect(entryTitle(entry, de)).toBe('Ladedruck 1,15 auf 1,30\u00a0bar\u00a0rel');
    expect(entryTitle(entry, psi)).toBe('Boost 16.7 to 18.9\u00a0psi\u00a0g');
  });

  it('gives a spark step its sign and its place', () => {
    const entry = {
      kind: 'spark' as const,
      title: '',
      change: change(null, { value: 1, unit: 'deg' }, 'above 4,400 rpm'),
    };
    expect(entryTitle(entry, en)).toBe('Spark +1.0° above 4,400\u00a0rpm');
  });

  it('names the mixture by the scale that the reader’s gauge has', () => {
    const entry = {
      kind: 'mixture' as const,
      title: '',
      change: change({ value: 0.85, unit: 'lambda' }, { value: 0.82, unit: 'lambda' }),
    };
    expect(entryTitle(entry, en)).toBe('Lambda 0.85 to 0.82');
    expect(entryTitle(entry, psi)).toBe('Air/fuel 12.5 to 12.1');
  });

  it('leaves a title of the tuner’s own alone', () => {
    expect(entryTitle({ kind: 'other', title: 'Bigger cooler', change: null }, en)).toBe('Bigger cooler');
  });

  it('does not turn a unit of another kind into boost', () => {
    const entry = { kind: 'boost' as const, title: '', change: change(null, { value: 3, unit: 'deg' }) };
    expect(entryTitle(entry, en)).toBe('Boost 3.00\u00a0°');
  });

  it('names the spray with its start', () => {
    expect(entryTitle({ kind: 'spray', title: '', change: null }, en)).toBe('Spray on');
    expect(
      entryTitle({ kind: 'spray', title: '', change: change(null, { value: 0.4, unit: 'bar' }) }, en),
    ).toBe('Spray on from 0.40\u00a0bar\u00a0g');
  });
});
