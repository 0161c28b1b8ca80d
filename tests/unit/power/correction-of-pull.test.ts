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
});
