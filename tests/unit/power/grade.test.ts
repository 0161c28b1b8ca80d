import { describe, expect, it } from 'vitest';
import { powerOfPull } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { drive, errorAgainst } from '../../support/drive-generator.ts';

const altitude = { noise: 0.15, step: 0.1 };

describe('slope', () => {
  it.each([0.02, -0.015])('of %f as entered is allowed for', (grade) => {
    const d = drive({ grade });
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
    const level = unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: 0 }));
    expect(errorAgainst(d.truth, level).mean * -Math.sign(grade)).toBeGreaterThan(0.03);
  });

  it('not entered is read from a logged altitude', () => {
    const d = drive({ grade: 0.02, altitude });
    const unknown = { ...d.conditions, grade_percent: null };
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, unknown));
    const note = found.notes.find((n) => n.code === 'power/grade-from-altitude');
    expect(note?.code === 'power/grade-from-altitude' && note.facts.grade).toBeCloseTo(0.02, 3);
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
  });

  it('downhill is read with its sign', () => {
    const d = drive({ grade: -0.03, altitude });
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: null }));
    const note = found.notes.find((n) => n.code === 'power/grade-from-altitude');
    expect(note?.code === 'power/grade-from-altitude' && note.facts.grade).toBeCloseTo(-0.03, 3);
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
  });

  it('as entered is believed before the altitude, and then nothing is said of it', () => {
    const d = drive({ grade: 0.02, altitude });
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: 0 }));
    const codes = found.notes.map((n) => n.code);
    expect(codes).not.toContain('power/grade-from-altitude');
    expect(codes).not.toContain('power/altitude-unclear');
    expect(errorAgainst(d.truth, found).mean).toBeLessThan(-0.03);
  });

  it('that the altitude does not clearly show is none', () => {
    const d = drive({ altitude: { noise: 2, step: 1 } });
    const found = unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: null }));
    const codes = found.notes.map((n) => n.code);
    expect(codes).toContain('power/altitude-unclear');
    expect(codes).toContain('power/level-assumed');
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
  });
});
