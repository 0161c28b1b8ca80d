import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  conductance,
  frictionFactor,
  lineLoss,
  meteredPoint,
  meterings,
  nozzleFlow,
  operatingPoint,
  setFlow,
} from '../../../core/delivery/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { kPa, rated, systemWith } from '../../support/delivery.ts';

const size = fc.double({ min: 60, max: 1000, noNaN: true });
const boost = fc.double({ min: 0, max: 250e3, noNaN: true });
const bore = fc.double({ min: 0.002, max: 0.008, noNaN: true });

it('flow through a nozzle rises with pressure and falls with density', () => {
  fc.assert(
    fc.property(size, fc.double({ min: 1e3, max: 1.5e6, noNaN: true }), (s, dp) => {
      const flow = unwrap(nozzleFlow(rated(s), dp, 900));
      expect(unwrap(nozzleFlow(rated(s), dp * 1.1, 900))).toBeGreaterThan(flow);
      expect(unwrap(nozzleFlow(rated(s), dp, 950))).toBeLessThan(flow);
    }),
  );
});

it('more boost, a narrower line or a stiffer check valve never brings more fluid', () => {
  fc.assert(
    fc.property(size, boost, bore, (s, b, d) => {
      const at = (change: Parameters<typeof systemWith>[0]) =>
        unwrap(
          operatingPoint(systemWith({ nozzle_mL_min: s, boost: b, line: { length: 4, bore: d }, ...change })),
        ).flow;
      const base = at({});
      const slack = base * 1e-5;
      expect(at({ boost: b + 20e3 })).toBeLessThanOrEqual(base + slack);
      expect(at({ line: { length: 4, bore: d * 0.8 } })).toBeLessThanOrEqual(base + slack);
      expect(at({ crackingPressure: kPa(50) })).toBeLessThanOrEqual(base + slack);
    }),
  );
});

it('what the pump gives is what the nozzles take', () => {
  fc.assert(
    fc.property(size, size, boost, bore, (a, b, atBoost, d) => {
      const one = systemWith({ nozzle_mL_min: a, boost: atBoost, line: { length: 3, bore: d } });
      const system = {
        ...one,
        nozzles: [...one.nozzles, { conductance: conductance(rated(b)), backPressure: one.ambientPressure }],
      };
      const point = unwrap(operatingPoint(system));
      const inlet = point.pumpPressure - point.lineLoss;
      expect(setFlow(system, inlet) / point.flow).toBeCloseTo(1, 4);
    }),
  );
});

it('a higher setting never brings less, whatever meters it', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(fc.constantFrom(...meterings), share, share, boost, (metering, a, b, atBoost) => {
      const system = systemWith({ boost: atBoost });
      const [less, more] = [Math.min(a, b), Math.max(a, b)].map(
        (s) => unwrap(meteredPoint(system, metering, s)).flow,
      );
      return (more ?? 0) >= (less ?? 0) * (1 - 1e-5);
    }),
  );
});

it('line loss rises with flow right through the change to turbulence', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-7, max: 8e-5, noNaN: true }), bore, (flow, d) => {
      const line = { length: 3, bore: d };
      const liquid = { density: 920, viscosity: 1.5e-3 };
      return lineLoss(line, liquid, flow * 1.02) > lineLoss(line, liquid, flow);
    }),
  );
  expect(frictionFactor(2300)).toBeCloseTo(64 / 2300, 9);
  expect(frictionFactor(4000)).toBeCloseTo(0.3164 / 4000 ** 0.25, 9);
});
