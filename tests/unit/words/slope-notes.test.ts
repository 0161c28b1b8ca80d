import { describe, expect, it } from 'vitest';
import type { Note, Problem } from '../../../core/result/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, noteText, problemText } from '../../../core/words/index.ts';

const english = createShow('en', metricUnits);
const german = createShow('de', metricUnits);

const notes: readonly [Note, en: string, de: string][] = [
  [
    { code: 'power/grade-from-altitude', facts: { grade: 0.0204, error: 0.004 } },
    'Slope from the logged altitude: +2.0 ± 0.8\u00a0%.',
    'Steigung aus der aufgezeichneten Höhe: +2,0 ± 0,8\u00a0%.',
  ],
  [
    { code: 'power/grade-from-altitude', facts: { grade: -0.031, error: 0.005 } },
    'Slope from the logged altitude: −3.1 ± 1.0\u00a0%.',
    'Steigung aus der aufgezeichneten Höhe: −3,1 ± 1,0\u00a0%.',
  ],
  [
    { code: 'power/altitude-unclear', facts: { grade: 0.004, error: 0.003 } },
    'The logged altitude shows no clear slope (+0.4 ± 0.6\u00a0%); it was not used.',
    'Die aufgezeichnete Höhe zeigt keine klare Steigung (+0,4 ± 0,6\u00a0%); sie wurde nicht verwendet.',
  ],
  [
    { code: 'power/two-way-slope', facts: { grade: -0.011, half: 0.002 } },
    'Out and back differ as on a slope of −1.1 ± 0.2\u00a0%, or as much wind.',
    'Hin und zurück unterscheiden sich wie bei −1,1 ± 0,2\u00a0% Steigung oder entsprechend viel Wind.',
  ],
];

const problems: readonly [Problem, en: string, de: string][] = [
  [
    { code: 'power/no-two-way', facts: { out: 2, back: 0 } },
    'Two-way averaging needs pulls in both directions; there are 2 out and 0 back.',
    'Für den Mittelwert aus Hin und Rück braucht es Fahrten in beiden Richtungen; es sind 2 hin und 0 zurück.',
  ],
  [
    { code: 'power/no-common-band', facts: {} },
    'The pulls share no band of engine speed.',
    'Die Züge haben keinen gemeinsamen Drehzahlbereich.',
  ],
];

describe('slope in words', () => {
  it.each(notes)('$code says which way and by how much, in both languages', (note, en, de) => {
    expect(noteText(note, english)).toBe(en);
    expect(noteText(note, german)).toBe(de);
  });

  it.each(problems)('$code says what is there and what to drive, in both languages', (problem, en, de) => {
    expect(problemText(problem, english).message).toBe(en);
    expect(problemText(problem, german).message).toBe(de);
    expect(problemText(problem, english).remedy).not.toBe('');
    expect(problemText(problem, german).remedy).not.toBe('');
  });
});
