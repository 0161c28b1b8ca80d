import { describe, expect, it } from 'vitest';
import { sampleFlag } from '../../../../core/log/index.ts';
import { type SpeedSignal, speedSignal } from '../../../../core/power/speed/speed-signal.ts';
import { channelFrom, logOf } from '../../../support/drive-generator.ts';
import { normal, seeded } from '../../../support/random.ts';

const kmh = 1 / 3.6;

/** A car gaining speed less and less: 20 to 40 m/s in 8 s. */
const speedAt = (t: number) => 20 + 3.3 * t - 0.1 * t * t;

function signalOf(
  rate: number,
  read: (t: number, row: number) => number,
  flags: (row: number) => number = () => 0,
): SpeedSignal {
  const n = Math.round(8 * rate);
  const time = Float64Array.from({ length: n }, (_, i) => i / rate);
  const channel = channelFrom('Speed', 'vehicleSpeed', 'km/h', Float64Array.from(time, read));
  for (let i = 0; i < n; i++) channel.flags[i] = flags(i);
  const found = speedSignal(logOf(time, [channel]), channel, 0, n);
  if (!found) throw new Error('no signal');
  return found;
}

/** Worst distance between samples and the true speed. */
const worst = (s: SpeedSignal) =>
  s.value.reduce((most, v, i) => Math.max(most, Math.abs(v - speedAt(s.time[i] as number))), 0);

describe('a speed channel', () => {
  it('without noise or steps passes as it is', () => {
    const s = signalOf(20, speedAt);
    expect(s).toMatchObject({ step: 0, hold: 0, outliers: 0 });
    expect(s.time.length).toBe(160);
    expect(worst(s)).toBe(0);
  });

  it('shows the noise it has', () => {
    const gauss = normal(seeded(5));
    const s = signalOf(20, (t) => speedAt(t) + 0.05 * gauss());
    expect(s.noise).toBeGreaterThan(0.04);
    expect(s.noise).toBeLessThan(0.06);
  });

  it('in steps wider than its rise per row is read where it steps', () => {
    const s = signalOf(100, (t) => Math.round(speedAt(t) / kmh) * kmh);
    expect(s.step / kmh).toBeCloseTo(1, 6);
    expect(s.hold).toBe(0);
    // A step is timed to half a row, which is 0.06 km/h here: ten times better than the step.
    expect(worst(s)).toBeLessThan(0.07 * kmh);
  });

  it('that rises evenly in steps is not taken for a slow sensor', () => {
    const time = Float64Array.from({ length: 400 }, (_, i) => i / 50);
    const channel = channelFrom(
      'Speed',
      'vehicleSpeed',
      'km/h',
      time.map((t) => Math.round(20 + 10 * t) * kmh),
    );
    const s = speedSignal(logOf(time, [channel]), channel, 0, time.length) as SpeedSignal;
    expect(s.hold).toBe(0);
    for (let i = 0; i < s.time.length; i++)
      expect(Math.abs((s.value[i] as number) - (20 + 10 * (s.time[i] as number)) * kmh)).toBeLessThan(
        0.11 * kmh,
      );
  });

  it.each([
    [20, 4],
    [50, 5],
    [100, 20],
  ])('at %i rows a second that is read every %i rows loses its repeats', (rate, every) => {
    const s = signalOf(rate, (_, row) => speedAt((row - (row % every)) / rate));
    expect(s.hold).toBeCloseTo(every / rate, 6);
    expect(worst(s)).toBeLessThan(1e-9);
  });

  it('that is read slowly and in steps too loses its repeats and keeps its steps', () => {
    const s = signalOf(50, (_, row) => Math.round(speedAt((row - (row % 10)) / 50) / kmh) * kmh);
    expect(s.hold).toBeCloseTo(0.2, 6);
    expect(worst(s)).toBeLessThanOrEqual(0.5001 * kmh);
  });

  it('leaves out held and empty cells', () => {
    const s = signalOf(
      20,
      (t, row) => (row % 7 === 3 ? Number.NaN : speedAt(t)),
      (row) => (row % 7 === 3 ? sampleFlag.missing : row % 2 === 1 ? sampleFlag.held : 0),
    );
    expect(s.time.length).toBeLessThan(80);
    expect(worst(s)).toBe(0);
  });

  it('leaves out spikes and counts them', () => {
    const s = signalOf(20, (t, row) => (row === 40 ? 0 : row === 90 ? 70 : speedAt(t)));
    expect(s.outliers).toBe(2);
    expect(worst(s)).toBe(0);
  });

  it('of a thousand rows a second is thinned, not lost', () => {
    const s = signalOf(1000, speedAt);
    expect(s.time.length).toBeGreaterThanOrEqual(120);
    expect(s.time.length).toBeLessThan(260);
    expect(worst(s)).toBeLessThan(1e-3);
  });

  it('with a clock that stands still or jumps back loses those rows', () => {
    const time = Float64Array.from({ length: 100 }, (_, i) => (i === 50 || i === 51 ? 2.4 : i / 20));
    const channel = channelFrom('Speed', 'vehicleSpeed', 'km/h', time.map(speedAt));
    const s = speedSignal(logOf(time, [channel]), channel, 0, 100) as SpeedSignal;
    for (let i = 1; i < s.time.length; i++)
      expect(s.time[i] as number).toBeGreaterThan(s.time[i - 1] as number);
  });

  it('with five samples is none', () => {
    const time = Float64Array.of(0, 1, 2, 3, 4);
    const channel = channelFrom('Speed', 'vehicleSpeed', 'km/h', time);
    expect(speedSignal(logOf(time, [channel]), channel, 0, 5)).toBeNull();
  });
});
