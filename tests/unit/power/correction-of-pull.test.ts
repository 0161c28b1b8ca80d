import { describe, expect, it } from 'vitest';
import { correctionFactor, powerOfPull, unknownConditions } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { channelFrom, drive } from '../../support/drive-generator.ts';

const d = drive();
const sae = { ...d.car, correction: 'SAE J1349' as const };
const air = { pressure: 96_000, temperature: 303.15, relativeHumidity: 0.5 };
const conditions = {
  ...d.conditions,
  ambient_C: 30,
  barometer_kPa: 96,
  relativeHumidity_percent: 50,
};

/** The log with one more channel that stands still. */
function withLevel(
  quantity: 'barometricPressure' | 'ambientTemperature' | 'boost',
  value: number,
  log = d.log,
) {
  const channel = channelFrom(quantity, quantity, '', new Float64Array(log.time.length).fill(value));
  return { ...log, channels: [...log.channels, channel] };
}

describe('correction of a pull', () => {
  const factor = unwrap(correctionFactor('SAE J1349', air)).factor;

  it('multiplies both powers and their errors', () => {
    const plain = unwrap(powerOfPull(d.log, d.pull, d.car, conditions));
    const found = unwrap(powerOfPull(d.log, d.pull, sae, conditions));
    expect(found.correction).toEqual({ standard: 'SAE J1349', factor });
    for (const key of ['wheelPower', 'enginePower', 'wheelPowerError', 'systematicError'] as const)
      expect((found[key][30] as number) / (plain[key][30] as number)).toBeCloseTo(factor, 12);
  });

  it('takes the air from the log where none is entered', () => {
    const log = withLevel('ambientTemperature', 303.15, withLevel('barometricPressure', 96_000));
    const found = unwrap(
      powerOfPull(log, d.pull, sae, { ...conditions, ambient_C: null, barometer_kPa: null }),
    );
    expect(found.correction.factor).toBeCloseTo(factor, 12);
  });

  it('corrects nothing where the air is unknown, and says so', () => {
    const found = unwrap(powerOfPull(d.log, d.pull, sae, unknownConditions));
    expect(found.correction).toEqual({ standard: 'none', factor: 1 });
    expect(found.notes.map((n) => n.code)).toContain('power/correction-air-unknown');
  });

  it('tells a boosted engine what the standard says', () => {
    const codes = (boost: number) =>
      unwrap(powerOfPull(withLevel('boost', boost), d.pull, sae, conditions)).notes.map((n) => n.code);
    expect(codes(90_000)).toContain('power/correction-boosted');
    expect(codes(0)).not.toContain('power/correction-boosted');
  });

  it('says so where nothing tells whether the engine is boosted, if it matters', () => {
    const codes = (log: typeof d.log, ambient_C: number, barometer_kPa: number) =>
      unwrap(powerOfPull(log, d.pull, sae, { ...conditions, ambient_C, barometer_kPa })).notes.map(
        (n) => n.code,
      );
    expect(codes(d.log, 30, 80)).toContain('power/correction-boost-untold');
    expect(codes(withLevel('boost', 90_000), 30, 80)).not.toContain('power/correction-boost-untold');
    // 25 C and 99 kPa dry are the standard's own air.
    expect(codes(d.log, 25, 100.6)).not.toContain('power/correction-boost-untold');
  });

  it('holds in its band what humidity that nobody read is worth', () => {
    const dry = { ...conditions, ambient_C: 35, barometer_kPa: 98, relativeHumidity_percent: null };
    const found = unwrap(powerOfPull(d.log, d.pull, sae, dry));
    const plain = unwrap(powerOfPull(d.log, d.pull, d.car, dry));
    // Hyland-Wexler: 5628 Pa of vapour at 35 C; 20 % of it off 95.2 kPa of dry air is 1.18 %, times 1.18 of the form.
    const own = (plain.systematicError[30] as number) / (plain.wheelPower[30] as number);
    const whole = (found.systematicError[30] as number) / (found.wheelPower[30] as number);
    expect(Math.sqrt(whole ** 2 - own ** 2)).toBeCloseTo(0.0138, 3);
    const note = found.notes.find((n) => n.code === 'power/default-humidity');
    expect(note?.facts).toMatchObject({ relativeHumidity: 0.5, half: expect.closeTo(0.027, 2) });
  });

  it('tells a barometer that the log contradicts: 1000 m are 12 kPa', () => {
    const codes = (logged: number) =>
      unwrap(powerOfPull(withLevel('barometricPressure', logged), d.pull, sae, conditions)).notes.map(
        (n) => n.code,
      );
    expect(codes(84_000)).toContain('power/barometers-disagree');
    expect(codes(95_000)).not.toContain('power/barometers-disagree');
  });
});
