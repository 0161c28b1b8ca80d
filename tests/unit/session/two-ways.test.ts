import { describe, expect, it } from 'vitest';
import { type EntryPulls, evidenceOfPull, type PullEvidence } from '../../../core/compare/index.ts';
import { type Car, powerOfPull } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { roadNotes, wayOfPull } from '../../../core/session/index.ts';
import { drive, usualDrive } from '../../support/drive-generator.ts';

const car: Car = {
  ...drive().car,
  gearRatios: [usualDrive.gearRatio],
  finalDrive: usualDrive.finalDrive,
  rollingRadius_m: usualDrive.radius,
};

/** A pull on a slope, worked out as if it were level; the way as the person said it. */
function pull(grade: number, seed: number, direction: 1 | -1 | null, slip = 0): PullEvidence {
  const d = drive({ grade, seed, slip });
  const power = unwrap(powerOfPull(d.log, d.pull, d.car, { ...d.conditions, grade_percent: 0 }));
  return { ...evidenceOfPull(d.log, d.pull, power, { id: `${seed}`, direction }), gear: null };
}

const entry = (...pulls: PullEvidence[]): EntryPulls => ({ id: 'e', repeats: null, pulls });

describe('the way of a pull', () => {
  it.each([
    [null, [null, null, null]],
    ['out', [1, 1, 1]],
    ['back', [-1, -1, -1]],
    ['out-first', [1, -1, 1]],
    ['back-first', [-1, 1, -1]],
  ] as const)('of a log driven %s', (direction, ways) => {
    expect([0, 1, 2].map((n) => wayOfPull(direction, n))).toEqual(ways);
  });
});

describe('what pulls both ways say of the road', () => {
  const sloped = [pull(0.01, 1, 1), pull(-0.01, 3, -1), pull(0.01, 2, 1)];

  it('is the slope that all but explains their difference', () => {
    const [note] = roadNotes([entry(...sloped)], car, true);
    expect(note?.code === 'power/two-way-slope' && note.facts.grade).toBeCloseTo(0.01, 3);
  });

  it('is told over the road that is left of engine speed once tyres slip', () => {
    // A force of m g sin(atan 0.03) in the generator: 3 % of slip left out would tell up to 3 % of the slope less.
    const steep = [pull(0.03, 1, 1, 0.03), pull(-0.03, 3, -1, 0.03), pull(0.03, 2, 1, 0.03)];
    const [note] = roadNotes([entry(...steep)], { ...car, tyreSlip: 0.03 }, true);
    expect(note?.code === 'power/two-way-slope' && note.facts.grade / 0.03).toBeGreaterThan(0.99);
    expect(note?.code === 'power/two-way-slope' && note.facts.grade / 0.03).toBeLessThan(1.015);
  });

  it.each([
    ['one pull each way', sloped.slice(0, 2), true],
    ['a way that nobody said', sloped.map((p) => ({ ...p, direction: null })), true],
    ['one way only', [pull(0.01, 1, 1), pull(0.01, 2, 1), pull(0.01, 4, 1)], true],
    ['a slope that was entered, so that powers are no longer those of a level road', sloped, false],
    [
      'power from a dyno',
      sloped.map((p) => ({ ...p, power: { ...p.power, basis: 'power-channel' as const } })),
      true,
    ],
  ])('is nothing with %s', (_, pulls, isLevel) => {
    expect(roadNotes([entry(...pulls)], car, isLevel)).toEqual([]);
  });
});
