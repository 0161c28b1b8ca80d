import { describe, expect, it } from 'vitest';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, readDate } from '../../../core/words/index.ts';

describe('a day as it is typed', () => {
  it.each([
    '14.3.2027',
    '14.03.2027',
    '14. 3. 2027',
    '14.03.27',
    '14/3/2027',
    '14-03-2027',
    '2027-03-14',
    '2027/3/14',
    ' 14.3.2027 ',
  ])('%s is 14 March 2027 in both languages', (text) => {
    for (const language of ['en', 'de'] as const) expect(readDate(text, language)).toBe('2027-03-14');
  });

  it('as a field shows it is read again, every month in either language', () => {
    for (const language of ['en', 'de'] as const)
      for (let month = 1; month <= 12; month++) {
        const day = `2028-${String(month).padStart(2, '0')}-29`;
        expect(readDate(createShow(language, metricUnits).date(day), language)).toBe(day);
      }
    expect(readDate('14. Mär 2027', 'de')).toBe('2027-03-14');
    expect(readDate('14 Mar 2027', 'en')).toBe('2027-03-14');
  });

  it.each([
    '',
    '14',
    '14.3.',
    '31.4.2027',
    '29.2.2027',
    '3/14/2027',
    '0.3.2027',
    '14.3.202',
    '14 Foo 2027',
    'tomorrow',
  ])('%s is none', (text) => {
    for (const language of ['en', 'de'] as const) expect(readDate(text, language)).toBeNull();
  });
});
