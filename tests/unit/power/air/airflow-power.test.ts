import { describe, expect, it } from 'vitest';
import { airflowPowerEstimate, powerOfPull } from '../../../../core/power/index.ts';
import { numbersWithin } from '../../../../core/power/numbers-within.ts';
import { type Note, unwrap } from '../../../../core/result/index.ts';
import { metricUnits } from '../../../../core/units/index.ts';
import { createShow, noteText } from '../../../../core/words/index.ts';
import { channelFrom, drive } from '../../../support/drive-generator.ts';

const d = drive();
const power = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));

/** The log with air for `share` of the engine power, at the middle of usual consumption and lambda 0.83. */
function withAir(share: number, lambda: number | null) {
  const perWatt = (0.33 / 3.6e6) * (lambda ?? 0.83) * 14.4;
  const air = d.log.time.map((t) => {
    let k = 0;
    while (k < power.time.length - 1 && (power.time[k] as number) < t) k++;
    return share * perWatt * (power.enginePower[k] as number);
  });
  const channels = [...d.log.channels, channelFrom('Air', 'airMassFlow', 'g/s', air)];
  if (lambda !== null)
    channels.push(channelFrom('Lambda', 'lambda', 'lambda', new Float64Array(air.length).fill(lambda)));
  return { ...d.log, channels };
}

describe('power from the air that is breathed', () => {
  it('0.2 kg/s at lambda 0.83 are 182.6 kW', () => {
    const channels = [
      channelFrom('Air', 'airMassFlow', 'g/s', new Float64Array(d.log.time.length).fill(0.2)),
    ];
    const found = unwrap(airflowPowerEstimate({ ...d.log, channels }, d.pull, power));
    expect((found.enginePower[3] as number) / 1000).toBeCloseTo(182.55, 1);
    expect(found.low[3] as number).toBeLessThan(found.enginePower[3] as number);
    expect(found.high[3] as number).toBeGreaterThan(found.enginePower[3] as number);
  });

  it('agrees where the air fits, with logged lambda too', () => {
    for (const lambda of [null, 0.79]) {
      const found = unwrap(airflowPowerEstimate(withAir(1, lambda), d.pull, power));
      expect(found.ratio).toBeCloseTo(1, 1);
      expect(found.notes[0]?.code).toBe('power/airflow-agrees');
    }
  });

  it('disagrees where the car was entered a third too heavy', () => {
    const found = unwrap(airflowPowerEstimate(withAir(0.75, null), d.pull, power));
    expect(found.agrees).toBe(false);
    expect(found.notes[0]?.code).toBe('power/airflow-disagrees');
  });

  it('is told with both powers, the one of the air and the one found', () => {
    const mean = power.enginePower.reduce((a, b) => a + b, 0) / power.enginePower.length;
    for (const share of [0.5, 1]) {
      const [note] = unwrap(airflowPowerEstimate(withAir(share, null), d.pull, power)).notes;
      const facts = note?.facts as { air: number; power: number };
      expect(facts.power).toBeCloseTo(mean, 3);
      expect(facts.air / mean).toBeCloseTo(share, 1);
      const said = noteText(note as Note, createShow('en', metricUnits));
      expect(said).toContain(`${(facts.air / 1e3).toFixed(0)}\u00a0kW at the engine`);
      expect(said).toContain(`${(mean / 1e3).toFixed(0)}\u00a0kW were found`);
    }
  });

  it('holds the air of the day against power as it was made, not as corrected to other air', () => {
    const conditions = { ...d.conditions, ambient_C: 35, barometer_kPa: 80, relativeHumidity_percent: 0 };
    const car = { ...d.car, dragArea_m2: 0, correction: 'ISO 1585' as const };
    const high = unwrap(powerOfPull(d.log, d.pull, car, conditions));
    const made = unwrap(powerOfPull(d.log, d.pull, { ...car, correction: 'none' }, conditions));
    expect(high.correction.factor).toBeGreaterThan(1.25);
    const log = withAir(1, null);
    const found = unwrap(airflowPowerEstimate(log, d.pull, high));
    expect(found.ratio).toBeCloseTo(unwrap(airflowPowerEstimate(log, d.pull, made)).ratio, 9);
  });

  it('says where no air flow is logged', () => {
    const found = airflowPowerEstimate(d.log, d.pull, power);
    expect(!found.ok && found.problems[0].code).toBe('power/no-air-flow');
  });

  it('is not held against a pull where the meter stands at its end, and that is told', () => {
    const log = withAir(1, null);
    const whole = log.channels.at(-1)?.values ?? new Float64Array();
    const most = numbersWithin(whole, d.pull.from, d.pull.to).reduce((a, b) => Math.max(a, b), 0);
    const cut = whole.map((x) => Math.min(x, 0.7 * most));
    const channels = [...d.log.channels, channelFrom('Air', 'airMassFlow', 'g/s', cut)];
    const found = unwrap(airflowPowerEstimate({ ...d.log, channels }, d.pull, power));
    expect(found.ratio).toBeCloseTo(1, 1);
    const note = found.notes.find((n) => n.code === 'power/airflow-at-end');
    expect(note?.facts).toMatchObject({ flow: 0.7 * most });
    const codes = unwrap(airflowPowerEstimate(log, d.pull, power)).notes.map((n) => n.code);
    expect(codes).not.toContain('power/airflow-at-end');
  });
});
