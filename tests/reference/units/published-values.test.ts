import { expect, it } from 'vitest';
import { convert } from '../../../core/units/index.ts';
import { checkValue } from '../../support/check-values.ts';

const exact = checkValue('conversion-exact');
const factors = exact.expected as Record<string, number>;

it.each([
  ['lbf_N', 'lbf', 'N'],
  ['mph_m_s', 'mph', 'm/s'],
  ['lb_kg', 'lb', 'kg'],
  ['hp_W', 'hp', 'W'],
  ['ps_W', 'PS', 'W'],
] as const)(`%s is exact (${exact.source})`, (key, from, to) => {
  const expected = factors[key] ?? Number.NaN;
  expect(Math.abs(convert(1, from, to) / expected - 1)).toBeLessThanOrEqual(Number(exact.tolerance));
});

it('1 bar in psi is as published', () => {
  const value = checkValue('practice-1-bar');
  expect(Math.abs(convert(1, 'bar', 'psi') - Number(value.expected))).toBeLessThanOrEqual(
    Number(value.tolerance),
  );
});
