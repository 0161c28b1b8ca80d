import { describe, expect, it } from 'vitest';
import { rehearsal } from '../../../electron/host/rehearsal.ts';

describe('the rehearsal of a log’s worker', () => {
  it('finds pulls with power in its invented log, again and again: all that a real one needs has run', () => {
    const pulls = [...rehearsal()].filter((pull) => pull !== null);
    expect(pulls.length).toBeGreaterThanOrEqual(20);
    for (const { pull, power, problems } of pulls) {
      expect(problems).toEqual([]);
      expect(power).not.toBeNull();
      expect(pull.flags.map((flag) => flag.code)).toEqual([]);
    }
  });

  it('is left between any two steps', () => {
    const steps = rehearsal();
    steps.next();
    steps.next();
    expect(steps.return(null).done).toBe(true);
    expect(steps.next().done).toBe(true);
  });
});
