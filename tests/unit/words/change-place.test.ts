import { describe, expect, it } from 'vitest';
import { imperialUnits, metricUnits } from '../../../core/units/index.ts';
import { changePlace, createShow } from '../../../core/words/index.ts';

const en = createShow('en', metricUnits);
const de = createShow('de', metricUnits);
const us = createShow('en', imperialUnits);

describe('where a change holds', () => {
  it('is said in the reader’s language, with the digits it was typed with', () => {
    expect(changePlace('above 0.6 bar', de)).toBe('über 0,6\u00a0bar\u00a0rel');
    expect(changePlace('über 0,60 bar', en)).toBe('above 0.6\u00a0bar\u00a0g');
    expect(changePlace('above 4,400 rpm', de)).toBe('über 4.400\u00a01/min');
  });

  it('is said in the reader’s units: 0.6 bar is 8.7 psi', () => {
    expect(changePlace('above 0.6 bar', us)).toBe('above 8.7\u00a0psi\u00a0g');
    expect(changePlace('below 60 kPa', us)).toBe('below 8.7\u00a0psi\u00a0g');
  });

  it('understands what the program itself writes', () => {
    expect(changePlace('above 0.60\u00a0bar\u00a0g', us)).toBe('above 8.7\u00a0psi\u00a0g');
    expect(changePlace('über 4.400\u00a01/min', en)).toBe('above 4,400\u00a0rpm');
  });

  it('stays as it was typed where it is anything else', () => {
    for (const text of [
      'in the four cells around peak torque',
      'above 0.6',
      'above 3 turns',
      'from idle to 0.6 bar',
    ])
      expect(changePlace(text, de)).toBe(
        text.replace('0.6 bar', '0.6\u00a0bar').replace('3 turns', '3\u00a0turns'),
      );
  });
});
