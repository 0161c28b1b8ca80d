import { describe, expect, it } from 'vitest';
import { imperialUnits, metricUnits } from '../../../core/units/index.ts';
import { createShow } from '../../../core/words/index.ts';

describe('show', () => {
  it('sets the unit beside the number, and a sign before an effect', () => {
    const show = createShow('en', metricUnits);
    expect(show.quantity(40_000, 'boost')).toBe('0.40\u00a0bar');
    expect(show.withHalf(152_300, 600, 'power')).toBe('152.3 ± 0.6\u00a0kW');
    expect(show.differenceWithHalf(10_900, 1_400, 'power')).toBe('+10.9 ± 1.4\u00a0kW');
    expect(show.difference(10_900, 'power')).toBe('+10.9\u00a0kW');
    expect(show.difference(-2.5, 'temperature')).toBe('−2.5\u00a0°C');
  });

  it('writes decimal commas in German and psi where chosen', () => {
    const show = createShow('de', imperialUnits);
    expect(show.quantity(40_000, 'boost')).toBe('5,8\u00a0psi');
    expect(show.quantity(0.85, 'lambda')).toBe('12,50\u00a0AFR');
  });
});
