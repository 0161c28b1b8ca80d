import { describe, expect, it } from 'vitest';
import { powerOfPull } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { powerRemarks, withPower } from '../../../core/session/index.ts';
import { channelFrom, drive } from '../../support/drive-generator.ts';

const d = drive();
const edited = {
  id: 'a',
  runId: 'r',
  pull: d.pull,
  counts: true,
  droppedBecause: null,
  decisions: [],
  isTrimmed: false,
  trimmedBecause: null,
};

describe('what is said of the powers of a run', () => {
  it('a log with air mass flow has each power held against it', () => {
    const power = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    const air = (share: number) => {
      const flow = (Math.max(...power.enginePower) * share * 0.33 * 0.83 * 14.4) / 3.6e6;
      const channels = [
        ...d.log.channels,
        channelFrom('Air', 'airMassFlow', 'g/s', new Float64Array(d.log.time.length).fill(flow)),
      ];
      const found = withPower({ ...d.log, channels }, edited, { car: d.car, conditions: d.conditions }, null);
      return found.power?.notes.map((n) => n.code);
    };
    expect(air(2)).toContain('power/airflow-disagrees');
    expect(air(0.75)).toContain('power/airflow-agrees');
    const without = withPower(d.log, edited, { car: d.car, conditions: d.conditions }, null);
    expect(without.power?.notes).toEqual(power.notes);
  });

  it('each remark comes once, air outside a standard once for each way', () => {
    const outside = (what: 'temperature' | 'factor', value: number) => ({
      code: 'power/correction-out-of-range' as const,
      facts: { standard: 'ISO 1585' as const, what, value, from: 0.93, to: 1.07 },
    });
    const level = { code: 'power/level-assumed' as const, facts: {} };
    expect(
      powerRemarks([
        level,
        outside('temperature', 312),
        level,
        outside('factor', 1.1),
        outside('factor', 1.2),
      ]),
    ).toEqual([level, outside('temperature', 312), outside('factor', 1.1)]);
  });
});
