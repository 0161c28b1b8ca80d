import fc from 'fast-check';
import { expect, it } from 'vitest';
import { gatesOf, ladderLimits, nothingMeasured, planLadder } from '../../../core/ladder/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { celsius } from '../../../core/units/index.ts';
import { driven, sampleLadder, sampleSetup } from '../../support/ladder.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

it('whatever the limits, no step passes one, and boost never climbs past any of its ends', () => {
  fc.assert(
    fc.property(
      fc.record({
        ambient_C: between(-5, 42),
        mapSensor_kPa: between(205, 400),
        duty_percent: between(70, 90),
        ceiling_kPa: between(100, 140),
        peak_kPa: between(102, 150),
        events: fc.constantFrom(0, 0, 1, 2),
      }),
      ({ ambient_C, mapSensor_kPa, duty_percent, ceiling_kPa, peak_kPa, events }) => {
        const limits = ladderLimits({ injectorDuty_percent: duty_percent, boostCeiling_kPa: ceiling_kPa });
        const boost = { ...driven.boost, measured: { ...driven.boost.measured, knockEvents: events } };
        const ladder = unwrap(
          planLadder(
            sampleLadder({
              setup: sampleSetup({ engine: { mapSensor_kPa, peakBoost_kPa: peak_kPa } }),
              limits,
              ledger: events === 0 ? [] : [driven.baseline, driven.spray, boost],
              today: { ambient_C, barometer_kPa: null, relativeHumidity_percent: null },
            }),
          ),
        );
        const start = ladder.standing.boost;
        const top = ladder.caps[0]?.boost ?? Number.NaN;
        for (const step of ladder.steps) {
          if (step.kind !== 'boost') continue;
          expect(step.to).toBeGreaterThan(step.from ?? Number.NaN);
          expect((step.to ?? 0) - (step.from ?? 0)).toBeLessThanOrEqual(12e3);
          expect(step.to).toBeLessThanOrEqual(Math.max(start, top) + 1e-6);
          expect(step.to).toBeLessThanOrEqual(ceiling_kPa * 1e3 + 1e-6);
          expect(step.predicted.manifoldPressure).toBeLessThanOrEqual(0.95e3 * mapSensor_kPa + 1e-6);
          expect(step.predicted.injectorDuty).toBeLessThanOrEqual(duty_percent / 100 + 1e-3);
          if (events > 0) expect(step.to).toBeLessThan(110e3);
        }
        for (const { predicted } of ladder.steps) {
          const range = predicted.knockHeadroom_rad;
          if (range) expect(range[0]).toBeLessThanOrEqual(range[1]);
          if (predicted.power) expect(predicted.power[0]).toBeLessThanOrEqual(predicted.power[1]);
        }
      },
    ),
    { seed: 41, numRuns: 25 },
  );
});

it('a gate never opens by coming closer to its limit', () => {
  const order = ['open', 'near', 'closed'];
  const context = {
    limits: ladderLimits(),
    ambientTemperature: celsius(20),
    ambientPressure: 100e3,
    mapSensor: 300e3,
    fuelPump: null,
    isSprayOn: true,
    plannedFlow: 3e-6,
    reserveShare: 0.2,
  };
  fc.assert(
    fc.property(between(0, 1.3), between(0, 0.3), (share, more) => {
      const at = (s: number) =>
        gatesOf(
          {
            ...nothingMeasured,
            leanestLambda: 0.75 + 0.15 * s,
            hottestIntake: celsius(20 + 40 * s),
            hottestExhaust: 873.15 + 350 * s,
            injectorDuty: 0.85 * s,
            manifoldPressure: 285e3 * s,
          },
          context,
        ).filter((g) => g.measured !== null);
      for (const [i, gate] of at(share + more).entries()) {
        const before = at(share)[i];
        expect(order.indexOf(gate.state)).toBeGreaterThanOrEqual(order.indexOf(before?.state ?? ''));
        expect(gate.closeness).toBeGreaterThanOrEqual((before?.closeness ?? 0) - 1e-12);
      }
    }),
    { seed: 42, numRuns: 200 },
  );
});
