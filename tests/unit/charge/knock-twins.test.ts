import { describe, expect, it } from 'vitest';
import {
  burntShare,
  type ChargePath,
  chargeAlong,
  ignitionDelay,
  type KnockState,
  knockIntegral,
  volumeRatio,
} from '../../../core/charge/index.ts';
import { portOverPressure } from '../../../core/charge/port-over-pressure.ts';
import { mixPoured } from '../../../core/fluids/index.ts';
import { unwrap } from '../../../core/result/index.ts';

const degree = Math.PI / 180;

/** The integral with a twentieth of a degree throughout, nothing saved. */
function plainIntegral(state: KnockState, spark: number): number {
  const { crank, exponent: n } = state;
  const end = Math.max(0, -spark + Math.cbrt(Math.log(10) / 5) * state.burnDuration_rad);
  const width = 0.05 * degree;
  const start = volumeRatio(crank, state.closing_rad);
  let [product, burnt, sum] = [1, 0, 0];
  for (let angle = state.closing_rad + width / 2; angle < end; angle += width) {
    const volume = volumeRatio(crank, angle) / start;
    const now = burntShare((angle + spark) / state.burnDuration_rad);
    product += (n - 1) * volume ** (n - 1) * state.heat * (now - burnt);
    burnt = now;
    const ratio = product / volume ** n;
    sum +=
      width / ignitionDelay(state.octane, state.pressure * ratio, state.temperature * ratio ** ((n - 1) / n));
  }
  return sum / state.engineSpeed_rad_s;
}

describe('the knock integral in wide steps', () => {
  it.each([
    [5, 150e3, 330],
    [14, 220e3, 345],
    [30, 180e3, 320],
  ])('agrees with its plain twin: %i degrees, %i Pa, %i K', (spark, pressure, temperature) => {
    const state: KnockState = {
      crank: { compressionRatio: 9.8, rodToCrank: 3.1 },
      closing_rad: -130 * degree,
      pressure,
      temperature,
      engineSpeed_rad_s: 500,
      octane: 98,
      spark_rad: spark * degree,
      burnDuration_rad: 50 * degree,
      heat: 5.5,
      exponent: 1.31,
    };
    expect(knockIntegral(state) / plainIntegral(state, spark * degree)).toBeCloseTo(1, 2);
  });
});

describe('portOverPressure', () => {
  const mix = unwrap(mixPoured({ methanol: 0.5 }));
  const path = (manifoldPressure: number): ChargePath => ({
    ambient: { pressure: 100e3, temperature: 293, relativeHumidity: 0.5 },
    manifoldPressure,
    compressor: { efficiency: 0.7 },
    cooler: { effectiveness: 0.7, coolant: null, loss: 6e3 },
    spray: {
      mix,
      fluidOverAir: 0.012,
      temperature: 293,
      place: 'after-cooler',
      dropDiameter: 20e-6,
      way: null,
    },
    airFlow: 0.2,
  });
  it('agrees with the charge worked out afresh, on its nodes and between them', () => {
    const portAt = portOverPressure(path, 200e3);
    for (const pressure of [200e3, 207e3, 213e3, 220e3, 291e3, 160e3]) {
      const [kept, fresh] = [unwrap(portAt(pressure)), unwrap(chargeAlong(path(pressure))).port];
      expect(Math.abs(kept.air.temperature - fresh.air.temperature)).toBeLessThan(0.1);
      expect(kept.air.pressure).toBeCloseTo(fresh.air.pressure, 3);
      expect(kept.liquid.parts.water).toBeCloseTo(fresh.liquid.parts.water, 4);
    }
  });
  it('hands on what is wrong at a pressure beside the one asked for', () => {
    expect(portOverPressure(path, 200e3)(90e3).ok).toBe(false);
  });
});
