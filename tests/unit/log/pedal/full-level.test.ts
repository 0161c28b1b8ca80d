import { describe, expect, it } from 'vitest';
import { fullLevel } from '../../../../core/log/pedal/full-throttle.ts';
import { seeded } from '../../../support/random.ts';

/** Rows a tenth of a second apart, so that a plateau of seven makes a pull. */
const step_s = 0.1;

/** A pedal that wanders below a third, but for plateaus: first row, rows and level of each. */
function pedal(...plateaus: readonly (readonly [number, number, number])[]): Float64Array {
  const random = seeded(7);
  const opening = Float64Array.from({ length: 90 }, () => 0.1 + 0.2 * random());
  for (const [from, rows, level] of plateaus) opening.fill(level, from, from + rows);
  return opening;
}

describe('the stop of a pedal', () => {
  const starts = Array.from({ length: 60 }, (_, i) => i);

  it('is found wherever a plateau of just enough rows begins', () => {
    for (const from of starts) expect(fullLevel(pedal([from, 7, 0.9]), step_s)?.full).toBeCloseTo(0.9, 9);
  });

  it('is not set by a plateau that is a row too short', () => {
    for (const from of starts) expect(fullLevel(pedal([from, 6, 0.9]), step_s)).toBeNull();
  });

  it('is the higher of two plateaus, whichever comes first', () => {
    for (const from of starts.slice(0, 30)) {
      expect(fullLevel(pedal([from, 20, 0.7], [from + 30, 7, 0.9]), step_s)?.full).toBeCloseTo(0.9, 9);
      expect(fullLevel(pedal([from, 7, 0.9], [from + 30, 20, 0.7]), step_s)?.full).toBeCloseTo(0.9, 9);
    }
  });
});
