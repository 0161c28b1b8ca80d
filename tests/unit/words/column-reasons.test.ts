import { describe, expect, it } from 'vitest';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, noteText } from '../../../core/words/index.ts';

const english = createShow('en', metricUnits);
const german = createShow('de', metricUnits);
const byValues = (unit: string, low: number, high: number) =>
  ({ code: 'log/column-by-values', facts: { word: 'iat', unit, low, high } }) as const;

describe('why a column was taken for what it is', () => {
  it('names units by their signs, not by their ids', () => {
    expect(noteText(byValues('C', 29.9, 46.7), english)).toBe(
      'The header says “iat”; values from 29.90 to 46.70 point to °C.',
    );
    expect(
      noteText({ code: 'log/column-by-name-unit', facts: { word: 'boost', unit: 'kgf/cm2' } }, german),
    ).toBe('Im Spaltenkopf steht „boost“, in kgf/cm².');
  });

  it('says what a unit without a sign is, and gives numbers no more digits than they have', () => {
    expect(noteText(byValues('1', 0, 1), english)).toContain('point to 0 … 1.');
    expect(noteText(byValues('rpm', 846, 6310), english)).toContain('from 846 to 6,310 point to rpm');
    expect(noteText({ code: 'log/column-by-name-unit', facts: { word: 'gear', unit: '' } }, english)).toBe(
      'The header says “gear”.',
    );
  });
});
