import { expect, it } from 'vitest';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, problemText } from '../../../core/words/index.ts';

it('a sentence about a log with a thousand columns names the first ones and counts the others', () => {
  const columns = Array.from({ length: 1000 }, (_, i) => `Sensor ${i + 1}`);
  const said = (language: 'en' | 'de', of: string[]) =>
    problemText({ code: 'log/no-time', facts: { columns: of } }, createShow(language, metricUnits)).message;
  expect(said('en', columns)).toMatch(/: Sensor 1, .*Sensor 12, 988 more\.$/);
  expect(said('de', columns)).toMatch(/Sensor 12, 988 weitere\.$/);
  expect(said('en', columns.slice(0, 12))).toMatch(/Sensor 11, Sensor 12\.$/);
});
