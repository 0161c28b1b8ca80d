import { expect, it } from 'vitest';
import type { VerdictWire } from '../../../core/contract/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow } from '../../../core/words/index.ts';
import { verdictOrigin } from '../../../renderer/where-from/verdict-origin.ts';

const verdict: VerdictWire = {
  kind: 'gain',
  effect: 6800,
  interval95: [5800, 7800],
  effectShare: 0.05,
  band_rad_s: [314.159, 628.319],
  pullsBefore: 4,
  pullsAfter: 3,
  morePulls: null,
  smallestSeen: 1500,
  repeatability: { deviation: 680, degrees: 11.4 },
  margin: 0.01,
  meanBefore: 136_000,
  reasons: [],
  remarks: [],
  witnesses: [],
  curve: null,
};
const texts = (card: Parameters<typeof verdictOrigin>[0], language: 'en' | 'de', of = verdict) =>
  Object.fromEntries(
    verdictOrigin(card, of, createShow(language, metricUnits)).inputs.map((i) => [i.symbol, i.text]),
  );

it('an effect is told with the levels, pulls and band that it came from', () => {
  expect(texts('effect', 'en')).toMatchObject({
    before: '136.0\u00a0kW',
    after: '142.8\u00a0kW',
    n_before: '4',
    n_after: '3',
    band: '3,000\u00a0rpm – 6,000\u00a0rpm',
  });
});

it('the scatter is told as the share and the degrees of freedom that stood in the formula', () => {
  const said = texts('repeatability', 'de');
  expect(said.sigma).toMatch(/^0,50\s%, Standardabweichung/);
  expect(said.nu).toBe('11,4');
  expect(texts('effect', 'de')).toHaveProperty('n_vorher', '4');
});

it('what is not known this time is left out, and the card stands as it is', () => {
  const open = { ...verdict, effect: null, interval95: null, repeatability: null, meanBefore: null };
  expect(texts('repeatability', 'en', open).sigma).toMatch(/^standard deviation of one pull/);
  expect(texts('effect', 'en', open)).not.toHaveProperty('after');
});
