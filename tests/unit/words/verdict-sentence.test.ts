import { describe, expect, it } from 'vitest';
import { declareChange } from '../../../core/compare/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, type SpokenVerdict, verdictSentence } from '../../../core/words/index.ts';

const en = createShow('en', metricUnits);
const de = createShow('de', metricUnits);
const rpm = Math.PI / 30;

const gain: SpokenVerdict = {
  kind: 'gain',
  effect: 10_900,
  interval95: [9_500, 12_300],
  morePulls: null,
  reasons: [],
  pullsBefore: 3,
  pullsAfter: 3,
  margin: 0.01,
  curve: {
    engineSpeed_rad_s: Array.from({ length: 70 }, (_, k) => (2_650 + 50 * k) * rpm),
    proven: [{ from: 20, to: 70, sign: 1 }],
  },
};
const boost = declareChange('boost', { from: 115_000, to: 130_000 });
const text = (...args: Parameters<typeof verdictSentence>) =>
  verdictSentence(...args)
    .map((p) => p.text)
    .join('')
    .replaceAll('\u00a0', ' ');

describe('the verdict as a sentence', () => {
  it('reads a mixture in hundredths, in thousandths where one was set, on a gauge in tenths', () => {
    const mixture = (from: number, to: number) => declareChange('mixture', { from, to });
    expect(text(gain, mixture(0.84, 0.82), en)).toMatch(/^Lambda from 0\.84 to 0\.82 gained/);
    expect(text(gain, mixture(0.84, 0.825), en)).toMatch(/^Lambda from 0\.840 to 0\.825 gained/);
    const gauge = createShow('en', { ...metricUnits, gaugeScale: 14.7 });
    expect(text(gain, mixture(0.84, 0.82), gauge)).toMatch(/^Air\/fuel from 12\.3 to 12\.1 gained/);
  });

  it('says change, size, doubt and place, with the verdict itself marked', () => {
    expect(text(gain, boost, en)).toBe(
      'Boost from 1.15 to 1.30 bar g gained 10.9 kW, give or take 1.4, from 3,650 rpm up.',
    );
    expect(verdictSentence(gain, boost, en).filter((p) => p.tone)).toEqual([
      { text: 'gained 10.9\u00a0kW', tone: 'gain' },
    ]);
    expect(text(gain, boost, de)).toBe(
      'Ladedruck von 1,15 auf 1,30 bar rel brachte 10,9 kW, auf 1,4 genau, ab 3.650 1/min.',
    );
  });

  it('says a loss without a minus sign', () => {
    const loss: SpokenVerdict = { ...gain, kind: 'loss', effect: -3_000, interval95: [-4_000, -2_000] };
    expect(text({ ...loss, curve: null }, declareChange('spray'), en)).toBe(
      'The spray lost 3.0 kW, give or take 1.0.',
    );
  });

  it('says what counts as equal, and how many pulls would decide', () => {
    const spark = declareChange('spark', { size: (0.5 * Math.PI) / 180 });
    const near: SpokenVerdict = { ...gain, effect: 300, interval95: [-900, 1_500], curve: null };
    expect(text({ ...near, kind: 'equivalent' }, spark, en)).toBe(
      'Spark +0.5° made no difference that matters: +0.3 kW, give or take 1.2, where 1.0 % counts as equal.',
    );
    expect(text({ ...near, kind: 'undecided', morePulls: 2 }, spark, en)).toBe(
      'Spark +0.5°: nobody can tell yet, undecided at +0.3 kW, give or take 1.2. 2 more pulls on each side should decide it.',
    );
  });

  it('gives the first reason where nothing can be compared', () => {
    const refused: SpokenVerdict = {
      ...gain,
      kind: 'not-comparable',
      effect: null,
      interval95: null,
      reasons: [{ code: 'compare/other-gear', facts: { before: 3, after: 4 } }],
    };
    expect(text(refused, null, en)).toBe(
      'The change can’t be judged. Another gear: 3 before, 4 after. Rotating parts weigh differently in each.',
    );
  });
});
