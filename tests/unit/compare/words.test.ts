import { describe, expect, it } from 'vitest';
import type { Note } from '../../../core/result/index.ts';
import { imperialUnits, metricUnits } from '../../../core/units/index.ts';
import { createShow, languages, noteText } from '../../../core/words/index.ts';

const degree = Math.PI / 180;
const at = { pullId: 'r1-2', side: 'after', place: 2 } as const;

/** Facts as they come, for every sentence that carries a number worth reading. */
const notes: readonly Note[] = [
  { code: 'compare/also-moved', facts: { quantity: 'boost', delta: 6000, half: 900, declared: 'mixture' } },
  { code: 'compare/also-moved', facts: { quantity: 'boost', delta: 6000, half: 900, declared: 'nothing' } },
  {
    code: 'compare/declared-partly',
    facts: { quantity: 'sparkAdvance', size: degree, delta: 0.4 * degree, retard: 0.6 * degree },
  },
  {
    code: 'compare/declared-missing',
    facts: { quantity: 'lambda', delta: 0.001, half: 0.004, size: -0.02, kind: 'mixture' },
  },
  { code: 'compare/more-than-one', facts: { quantities: ['boost', 'sparkAdvance'] } },
  { code: 'compare/knock-retard', facts: { before: 0, after: -1.5 * degree } },
  { code: 'compare/intake-corrected', facts: { delta: 3.1, correction: 0.0046, half: 0.005 } },
  { code: 'compare/left-out-outlier', facts: { ...at, share: -0.08 } },
  { code: 'compare/open', facts: { low: -900, high: 1500, margin: 1500 } },
  { code: 'compare/own-repeatability', facts: { ownShare: 0.011, sessionShare: 0.004 } },
];

describe('reasons and remarks', () => {
  it('read as a tuner would say them', () => {
    const show = createShow('en', metricUnits);
    expect(notes.map((n) => noteText(n, show).replaceAll('\u00a0', ' '))).toMatchInlineSnapshot(`
      [
        "Boost moved by +0.06 bar although only the mixture was to change: not comparable as that step.",
        "Boost moved by +0.06 bar although nothing was to change: this is not the same setup.",
        "Declared +1.0° of spark advance, logged +0.4°: retard took the rest.",
        "Declared −0.020 λ of mixture, logged +0.001 λ: the change is not in the data.",
        "More than one thing moved: boost, spark advance.",
        "Knock control was at work: 0.0° of retard before, 1.5° after.",
        "Intake air differs by +3.1 °C: power was corrected by +0.5 %, give or take 0.5 %.",
        "Pull 2 after is left out: it stands −8.0 % from its fellows, which chance would hardly do.",
        "Anything from −0.9 kW to +1.5 kW is still possible; under 1.5 kW counts as equal.",
        "These pulls scatter by 1.10 %, the session’s others by 0.40 %: judged on their own scatter alone.",
      ]
    `);
  });

  it('hold no missing fact in any language or unit', () => {
    for (const language of languages) {
      for (const units of [metricUnits, imperialUnits]) {
        const show = createShow(language, units);
        for (const note of notes) {
          const text = noteText(note, show);
          expect(text).not.toMatch(/undefined|NaN|null|\[object/);
          expect(text.length).toBeGreaterThan(20);
        }
      }
    }
  });
});
