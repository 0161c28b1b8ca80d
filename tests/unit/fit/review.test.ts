import { describe, expect, it } from 'vitest';
import { clearanceVolume, type FitFacts, fitRules, hazards, reviewFit } from '../../../core/fit/index.ts';
import { languages, wordsOf } from '../../../core/words/index.ts';
import { checkValue } from '../../support/check-values.ts';
import { inputNumber, itAgrees } from '../../support/published.ts';

const facts: FitFacts = {
  compressor: 'turbo',
  places: ['after-cooler'],
  hasCooler: true,
  hasAlcohol: true,
  hasMethanol: true,
};
const allYes = Object.fromEntries(fitRules.map((r) => [r.id, 'yes' as const]));
const state = (id: string, f = facts, answers: Record<string, 'yes' | 'no' | 'not-here'> = {}) =>
  reviewFit(f, answers).items.find((i) => i.id === id)?.state;

describe('the fit review', () => {
  it('has its rules in both languages, each id once, every hazard among them', () => {
    expect(fitRules.length).toBe(25);
    expect(new Set(fitRules.map((r) => r.id)).size).toBe(fitRules.length);
    expect(new Set(fitRules.map((r) => r.hazard))).toEqual(new Set(hazards));
    for (const language of languages) {
      const words = wordsOf(language).fitRules;
      for (const { id } of fitRules) {
        expect(words[id].question.endsWith('?')).toBe(true);
        expect(words[id].reason.length).toBeGreaterThan(20);
        expect(words[id].remedy.length).toBeGreaterThan(15);
      }
    }
  });

  it('unanswered is not passed: with no answer nothing passes but what the setup shows', () => {
    const review = reviewFit({ ...facts, places: [], compressor: null, hasCooler: null }, {});
    expect(review.items.some((i) => i.state === 'passed')).toBe(false);
    expect(review.beforeDriving.length + review.soon.length).toBe(review.items.length);
  });

  it('all answered yes on a sound setup leaves nothing to fix', () => {
    const review = reviewFit(facts, allYes);
    expect(review.beforeDriving).toEqual([]);
    expect(review.soon).toEqual([]);
  });

  it('a nozzle before a turbo is to be fixed, whatever was answered', () => {
    const before: FitFacts = { ...facts, places: ['before-compressor'] };
    expect(state('after-the-blades', before, allYes)).toBe('fix');
    expect(reviewFit(before, allYes).beforeDriving.map((i) => i.id)).toContain('after-the-blades');
  });

  it('a nozzle before a roots blower is in its right place, behind it is not', () => {
    const roots: FitFacts = { ...facts, compressor: 'roots', places: ['before-compressor'] };
    expect(state('before-the-rotors', roots)).toBe('passed');
    expect(state('before-the-rotors', { ...roots, places: ['manifold'] })).toBe('fix');
    expect(state('after-the-blades', roots)).toBeUndefined();
  });

  it('a nozzle before the cooler is to be fixed', () => {
    expect(state('after-the-cooler', { ...facts, places: ['before-cooler'] })).toBe('fix');
  });

  it('a no stands over what the setup shows', () => {
    expect(state('after-the-blades', facts, { 'after-the-blades': 'no' })).toBe('fix');
  });

  it('what every car has can not be waved away as not here', () => {
    expect(state('no-siphon', facts, { 'no-siphon': 'not-here' })).toBe('unanswered');
    expect(state('away-from-blow-off', facts, { 'away-from-blow-off': 'not-here' })).toBe('not-here');
  });

  it('plain water asks nothing about fire and poison of alcohol', () => {
    const water: FitFacts = { ...facts, hasAlcohol: false, hasMethanol: false };
    const ids = reviewFit(water, {}).items.map((i) => i.id);
    for (const id of ['storage', 'gloves-and-goggles', 'materials', 'tank-away-from-heat'] as const)
      expect(ids).not.toContain(id);
  });

  it('what to fix before driving comes heaviest first, known faults before open questions', () => {
    const { beforeDriving } = reviewFit(facts, { storage: 'no' });
    const weights = beforeDriving.map((i) => i.weight);
    expect(weights).toEqual([...weights].sort((a, b) => b - a));
    const eights = beforeDriving.filter((i) => i.weight === 8);
    expect(eights[0]?.id).toBe('storage');
    expect(beforeDriving.every((i) => i.weight >= 6)).toBe(true);
  });

  itAgrees(
    'hydraulic-lock-volume',
    (v) => 1e6 * clearanceVolume(inputNumber(v, 'cylinder_cc') * 1e-6, inputNumber(v, 'compression_ratio')),
  );

  it('a stuck valve of 500 mL/min fills that volume in 7 s (arithmetic of the same entry)', () => {
    const volume = clearanceVolume(500e-6, 9.5);
    expect(checkValue('hydraulic-lock-volume').note).toContain('7 s');
    expect(volume / (500e-6 / 60)).toBeCloseTo(7.06, 2);
  });
});
