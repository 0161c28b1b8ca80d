import { expect, it } from 'vitest';
import { findPulls, readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

/** One pull by the pedal from 5 to 12 s, with these figures for spark and knock retard [deg]. */
function flagsOf(spark: (t: number) => number, knock: (t: number) => number = () => 0): string[] {
  const rows = Array.from({ length: 800 }, (_, i) => {
    const t = i / 50;
    const isPull = t >= 5 && t < 12;
    const rpm = isPull ? 2200 + 520 * (t - 5) : 2200;
    return [t.toFixed(2), rpm.toFixed(0), isPull ? 100 : 15, spark(t).toFixed(1), knock(t).toFixed(1)];
  });
  const names = 'Time (s),RPM,Pedal (%),Ignition advance (deg),Knock retard (deg)';
  const text = [names, ...rows.map((r) => r.join(','))].join('\n');
  const log = unwrap(readLog(new TextEncoder().encode(text), { file: 'spark.csv' }));
  return findPulls(log).pulls.flatMap((p) => p.flags.map((f) => f.code));
}

/** Spark of a boosted pull: from cruise to full load, then slowly up. */
const usual = (t: number) => (t < 5 || t >= 12 ? 30 : t < 6 ? 30 - 20 * (t - 5) : 10 + 1.5 * (t - 6));
const within = (t: number, from: number, to: number) => t >= from && t < to;

it('spark that is taken back far and given again soon is torque taken back', () => {
  expect(flagsOf((t) => (within(t, 8, 8.3) ? -5 : usual(t)))).toEqual(['log/pull-intervention']);
});

it('a spark table with a hollow is none', () => {
  const hollow = (t: number) => (within(t, 7, 10) ? 8 * Math.sin(((t - 7) / 3) * Math.PI) : 0);
  expect(flagsOf((t) => usual(t) - hollow(t))).toEqual([]);
});

it('nor is spark at the start and at the end of a pull', () => {
  expect(flagsOf(usual)).toEqual([]);
  expect(flagsOf((t) => (within(t, 11.7, 12) ? -5 : usual(t)))).toEqual([]);
});

it('spark taken back for knock is knock', () => {
  expect(
    flagsOf(
      (t) => usual(t) - (within(t, 8, 8.4) ? 11 : 0),
      (t) => (within(t, 8, 8.4) ? 11 : 0),
    ),
  ).toEqual(['log/pull-knock']);
});

it('one reading of nonsense is none', () => {
  expect(flagsOf((t) => (Math.abs(t - 8) < 0.005 ? -60 : usual(t)))).toEqual([]);
});
