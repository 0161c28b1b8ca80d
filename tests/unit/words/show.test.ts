import { describe, expect, it } from 'vitest';
import { imperialUnits, metricUnits } from '../../../core/units/index.ts';
import { createShow } from '../../../core/words/index.ts';

describe('show', () => {
  it('sets the unit beside the number, and a sign before an effect', () => {
    const show = createShow('en', metricUnits);
    expect(show.quantity(40_000, 'boost')).toBe('0.40\u00a0bar\u00a0g');
    expect(show.withHalf(152_300, 600, 'power')).toBe('152.3 ± 0.6\u00a0kW');
    expect(show.differenceWithHalf(10_900, 1_400, 'power')).toBe('+10.9 ± 1.4\u00a0kW');
    expect(show.difference(10_900, 'power')).toBe('+10.9\u00a0kW');
    expect(show.difference(-2.5, 'temperature')).toBe('−2.5\u00a0°C');
  });

  it('writes decimal commas in German and psi where chosen', () => {
    const show = createShow('de', imperialUnits);
    expect(show.quantity(40_000, 'boost')).toBe('5,8\u00a0psi\u00a0rel');
    expect(show.quantity(0.85, 'lambda')).toBe('12,50\u00a0AFR');
  });

  it('says of every pressure what it counts from, and of a difference of two nothing', () => {
    const show = createShow('en', metricUnits);
    expect(show.quantity(182_000, 'pressure')).toBe('182.0\u00a0kPa\u00a0abs');
    expect(show.quantity(700_000, 'fluidPressure', 1)).toBe('7.0\u00a0bar\u00a0g');
    expect(show.unit('boost')).toBe('bar\u00a0g');
    expect(show.channel(101_300, 'barometricPressure')).toBe('101.3\u00a0kPa\u00a0abs');
    expect(show.withHalf(40_000, 1_000, 'boost')).toBe('0.40 ± 0.01\u00a0bar\u00a0g');
    expect(show.difference(10_000, 'boost')).toBe('+0.10\u00a0bar');
    expect(show.differenceWithHalf(10_000, 1_000, 'pressure')).toBe('+10.0 ± 1.0\u00a0kPa');
    expect(show.span(10_000, 'boost')).toBe('0.10\u00a0bar');
    expect(show.span(2.5, 'temperature')).toBe('2.5\u00a0°C');
    expect(show.symbol('psi', 'pressure')).toBe('psi\u00a0abs');
  });

  it('writes fuel flow and inertia in the units of either system, with digits that fit them', () => {
    // One pound is 0.45359237 kg, one foot 0.3048 m: NIST Special Publication 811, appendix B.
    const [metric, imperial] = [createShow('en', metricUnits), createShow('en', imperialUnits)];
    const fuel = (157 * 0.45359237) / 3600;
    expect(metric.quantity(fuel, 'massFlow')).toBe('19.8\u00a0g/s');
    expect(imperial.quantity(fuel, 'massFlow')).toBe('157\u00a0lb/h');
    const flywheel = 4 * 0.45359237 * 0.3048 ** 2;
    expect(metric.quantity(flywheel, 'inertia', 3)).toBe('0.169\u00a0kg m²');
    expect(imperial.quantity(flywheel, 'inertia', 3)).toBe('4.000\u00a0lb ft²');
  });

  it('mixes units by quantity', () => {
    const show = createShow('en', { ...metricUnits, boost: 'psi', power: 'PS', pressure: 'inHg' });
    // One psi is 6894.757 Pa: NIST Special Publication 811, appendix B.
    expect(show.quantity(6894.757, 'boost')).toBe('1.0\u00a0psi\u00a0g');
    expect(show.quantity(294.15, 'temperature')).toBe('21.0\u00a0°C');
    // One metric horsepower is 735.49875 W: the same table.
    expect(show.quantity(73549.875, 'power')).toBe('100.0\u00a0PS');
    expect(show.quantity(101_325, 'pressure')).toBe('29.92\u00a0inHg\u00a0abs');
  });

  it('states the scale of a ratio of air to fuel where its unit stands alone', () => {
    expect(createShow('en', imperialUnits).unit('lambda')).toBe('AFR (14.7)');
    expect(createShow('de', { ...metricUnits, gaugeScale: 14.64 }).unit('lambda')).toBe('AFR (14,64)');
    expect(createShow('en', metricUnits).unit('lambda')).toBe('λ');
  });

  it('groups thousands as the language does', () => {
    expect(createShow('en', metricUnits).quantity((6500 * Math.PI) / 30, 'engineSpeed')).toBe(
      '6,500\u00a0rpm',
    );
    expect(createShow('de', metricUnits).quantity((6500 * Math.PI) / 30, 'engineSpeed')).toBe(
      '6.500\u00a01/min',
    );
  });

  it('tells a moment by universal time, and leaves what is none alone', () => {
    expect(createShow('en', metricUnits).moment('2027-03-14T10:03:59.000Z')).toBe('14 Mar 2027, 10:03 UTC');
    expect(createShow('de', metricUnits).moment('2027-03-14T10:03:59.000Z')).toBe('14.03.2027, 10:03 UTC');
    expect(createShow('en', metricUnits).moment('')).toBe('');
  });

  it('writes what nobody knows the unit of with the digits that tell', () => {
    const { reading } = createShow('en', metricUnits);
    expect([0, 7, 1234, -3276.8, 95.2, 0.0123, 0.99999].map(reading)).toEqual([
      '0',
      '7',
      '1,234',
      '−3,277',
      '95.20',
      '0.01230',
      '1.0000',
    ]);
    expect(reading(1.98e14)).toBe('1.980E14');
    expect(reading(-2.5e-300)).toBe('−2.500E−300');
    expect(createShow('de', metricUnits).reading(1.98e14)).toBe('1,980E14');
  });
});
