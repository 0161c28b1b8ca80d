import { describe, expect, it } from 'vitest';
import type { FootFit } from '../../../../core/log/rises/foot-error.ts';
import { momentsOf, momentTable } from '../../../../core/log/rises/foot-fit.ts';

const rate_Hz = 20;
const time = Float64Array.from({ length: 8 * rate_Hz }, (_, i) => i / rate_Hz);
const whole = { from: 0, to: time.length };

/** A first-order lag of a course, sampled: written apart from the model that is fitted. */
function lagged(course: (t: number) => number, lag_s: number): (t: number) => number {
  const step = 0.001;
  const values: number[] = [course(0)];
  for (let t = step; t < 9; t += step) {
    const last = values.at(-1) ?? 0;
    values.push(last + ((course(t) - last) * step) / lag_s);
  }
  return (t) => values[Math.round(t / step)] ?? 0;
}

const rise = (start_s: number, travel_s: number) => (t: number) =>
  Math.max(0, Math.min(1, (t - start_s) / travel_s));

describe('the moment the foot met its stop', () => {
  const pressureFit: FootFit = {
    way: 'down',
    as: 'pressure',
    from_s: 3.9,
    to_s: 4.4,
    before_s: 0.4,
    after_s: 0.6,
    noise: 1e3,
    open: { level: -1e3, within: 3e3 },
  };

  it.each([0.1, 0.25, 0.4])('is found in a manifold that follows an even plate of %f s', (travel_s) => {
    const share = lagged((t) => 1 - (1 - rise(4, travel_s)(t)) ** 1.6, 0.06);
    const boost = time.map((t) => -62e3 + 61e3 * share(t));
    const [moment] = momentsOf([momentTable(boost, time, whole, pressureFit)]);
    expect(Math.abs((moment?.at_s ?? 0) - (4 + travel_s))).toBeLessThan(0.1);
    expect(moment?.within_s).toBeGreaterThan(0);
  });

  it('is not asked of fewer than five samples of a pressure, or seven of a speed', () => {
    const few = (count: number, fit: typeof pressureFit) =>
      momentTable(new Float64Array(count), time.subarray(78, 78 + count), { from: 0, to: count }, fit);
    expect(few(4, pressureFit)).toBeNull();
    expect(few(5, pressureFit)).not.toBeNull();
    expect(few(6, { ...pressureFit, as: 'speed' })).toBeNull();
  });
});

describe('the moment the foot met its stop, by engine speed', () => {
  it.each([0.06, 0.12, 0.3])(
    'is told within the margin for a foot of %f s, be slow feet ever so likely',
    (travel_s) => {
      const torque = lagged(rise(4, travel_s), 0.05);
      let w = 250;
      const speed = time.map((t, i) => {
        if (i > 0) w += (8 + 40 * torque(t - 0.5 / rate_Hz)) / rate_Hz;
        return w + 0.3 * Math.sin(12.9898 * i);
      });
      const fit = { way: 'down', as: 'speed', from_s: 3.9, to_s: 4.3, before_s: 0.3, after_s: 0.4 } as const;
      const [moment] = momentsOf([momentTable(speed, time, whole, { ...fit, noise: 1 })]);
      expect(Math.abs((moment?.at_s ?? 0) - (4 + travel_s))).toBeLessThan(0.13);
    },
  );
});

describe('the moment the foot lifts', () => {
  it('is where engine speed begins to turn, not where it has turned', () => {
    const torque = lagged((t) => 1 - rise(4, 0.12)(t), 0.05);
    let w = 400;
    const speed = time.map((t, i) => {
      if (i > 0) w += (90 * torque(t - 0.5 / rate_Hz) - 20) / rate_Hz;
      return w;
    });
    const table = momentTable(speed, time, whole, {
      way: 'lift',
      as: 'speed',
      from_s: 3.9,
      to_s: 4.3,
      before_s: 0.4,
      after_s: 0.3,
      noise: 1,
    });
    expect(Math.abs((momentsOf([table])[0]?.at_s ?? 0) - 4)).toBeLessThan(0.08);
  });
});
