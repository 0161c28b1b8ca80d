import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, readNumber } from '../../../core/words/index.ts';

describe('a number as typed', () => {
  it.each([
    ['0.85', 0.85],
    ['0,85', 0.85],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['1 234.5', 1234.5],
    ['−3', -3],
    ['+1.0', 1],
    ['.5', 0.5],
    ['5.', 5],
    ['1,234,567', 1234567],
    ['0.125', 0.125],
    ['0,125', 0.125],
  ])('%s is %d in both languages', (text, value) => {
    expect(readNumber(text, 'en')).toBe(value);
    expect(readNumber(text, 'de')).toBe(value);
  });

  it('lets the language decide where one sign stands before three digits', () => {
    expect(readNumber('1,200', 'en')).toBe(1200);
    expect(readNumber('1,200', 'de')).toBe(1.2);
    expect(readNumber('1.200', 'en')).toBe(1.2);
    expect(readNumber('1.200', 'de')).toBe(1200);
  });

  it.each(['', '-', 'twelve', '1.2.3', '1,2,3', '12e3', '1,23.456,7', '.'])('“%s” is no number', (text) => {
    expect(readNumber(text, 'en')).toBeNull();
  });

  it('reads back whatever the program prints', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.integer({ min: 0, max: 4 }),
        fc.constantFrom('en' as const, 'de' as const),
        (value, digits, language) => {
          const printed = createShow(language, metricUnits).number(value, digits);
          expect(readNumber(printed, language)).toBeCloseTo(Number(value.toFixed(digits)), digits - 0.5);
        },
      ),
    );
  });
});
