import { describe, expect, it } from 'vitest';
import { heldReadings, lineBetweenReadings } from '../../../../core/log/time/held-readings.ts';
import { normal, seeded } from '../../../support/random.ts';

const kmh = 1 / 3.6;
/** 12 s at rest in one speed, 8 s of a pull, 6 s of lift. */
const speedAt = (t: number) =>
  t < 12 ? 14 : t < 20 ? 14 + 3.4 * (t - 12) - 0.12 * (t - 12) ** 2 : 33.52 - 0.8 * (t - 20);
const rowsOf = (rate: number) => Float64Array.from({ length: 26 * rate }, (_, i) => i / rate);
const stepped = (v: number) => Math.round(v / kmh) * kmh;
const all = (time: Float64Array) => [{ from: 0, to: time.length }];

describe.each([1, 2, 4, 5])('a speed that is read %i times a second', (perSecond) => {
  const readAt = (t: number) => Math.floor(t * perSecond + 1e-9) / perSecond;

  it.each([
    ['exactly', (v: number) => v],
    ['in steps of 0.1 km/h', (v: number) => Math.round(v * 36) / 36],
  ])('and written %s is known by its beat, and only its readings are taken', (_, write) => {
    const time = rowsOf(20);
    const values = time.map((t) => write(speedAt(readAt(t))));
    const held = heldReadings(time, values, 0, time.length);
    expect(held?.interval).toBeCloseTo(1 / perSecond, 2);
    const inPull = held?.rows.filter((i) => (time[i] as number) > 13 && (time[i] as number) < 20) ?? [];
    expect(inPull.length).toBeGreaterThanOrEqual(7 * perSecond - 2);
    for (const i of inPull)
      expect(Math.abs((values[i] as number) - speedAt(time[i] as number))).toBeLessThan(0.02);
  });
});

it('a speed read once a second in whole km/h is known too', () => {
  const time = rowsOf(10);
  const values = time.map((t) => stepped(speedAt(Math.floor(t + 1e-9))));
  expect(heldReadings(time, values, 0, time.length)?.interval).toBeCloseTo(1, 2);
});

it('four readings of a log that holds one short pull are enough', () => {
  const time = Float64Array.from({ length: 50 }, (_, i) => i / 10);
  const values = time.map((t) => {
    const k = Math.floor(t + 0.3);
    return stepped(16 + 4.6 * k - 0.2 * k * k);
  });
  const held = heldReadings(time, values, 0, time.length);
  expect(held?.interval).toBeCloseTo(1, 2);
  expect([...(held?.rows ?? [])].map((i) => time[i])).toEqual([0.7, 1.7, 2.7, 3.7, 4.7]);
});

it.each([1, 2])(
  'steady before the pull and read %i times a second: the last reading before the first change is taken',
  (perSecond) => {
    const time = rowsOf(20);
    const steady = 30 / 3.6;
    for (let phase = 0; phase < 1; phase += 0.1) {
      const readAt = (t: number) => Math.floor((t - phase) * perSecond + 1e-9) / perSecond + phase;
      const pull = (t: number) => steady + 5 * Math.max(0, t - 12) - 0.1 * Math.max(0, t - 12) ** 2;
      const values = time.map((t) => stepped(pull(readAt(t))));
      const held = heldReadings(time, values, 0, time.length);
      const [first, second] = held?.rows ?? [];
      // Where the foot goes down just after a reading, the next is a step away and the one before it is still steady.
      expect(values[first as number]).toBeCloseTo(stepped(steady), 9);
      expect((time[second as number] as number) - (time[first as number] as number)).toBeCloseTo(
        1 / perSecond,
        1,
      );
      const line = lineBetweenReadings(time, values, all(time));
      const off = time
        .map((t, i) => Math.abs((line[i] as number) - pull(t)))
        .filter((_, i) => (time[i] as number) < 24);
      // Half a step, the row it is read on, and what a straight line leaves of the corner.
      expect(Math.max(...off)).toBeLessThan(0.5 * kmh + 5 * 0.05 + 0.25 * (5 / perSecond) + 0.01);
    }
  },
);

it('no reading is made up before the first row', () => {
  const time = rowsOf(10).map((t) => t + 12.3);
  const values = time.map((t) => stepped(speedAt(Math.floor(t + 1e-9))));
  const held = heldReadings(time, values, 0, time.length);
  expect(time[(held?.rows ?? [])[0] as number]).toBeCloseTo(13, 1);
});

it('four steps of a slow climb are no readings', () => {
  const time = rowsOf(20);
  const climbing = time.map((t) => stepped(14 + 0.05 * t));
  expect(heldReadings(time, climbing, 0, time.length)).toBeNull();
});

describe('a speed that is read on every row is no slow sensor', () => {
  it.each([10, 20, 50, 100])('in steps of 1 km/h, %i rows a second', (rate) => {
    const time = rowsOf(rate);
    expect(
      heldReadings(
        time,
        time.map((t) => stepped(speedAt(t))),
        0,
        time.length,
      ),
    ).toBeNull();
  });
  it.each([10, 20, 50, 100])('with noise and steps of 0.1 km/h, %i rows a second', (rate) => {
    const gauss = normal(seeded(rate));
    const time = rowsOf(rate);
    const values = time.map((t) => Math.round((speedAt(t) + 0.03 * gauss()) * 36) / 36);
    expect(heldReadings(time, values, 0, time.length)).toBeNull();
  });
  it('not even where it stands still most of the time', () => {
    const time = rowsOf(20);
    const values = time.map((t) => (t > 12 && t < 13 ? 14 + 3 * (t - 12) : t >= 13 ? 17 : 14));
    expect(heldReadings(time, values, 0, time.length)).toBeNull();
  });
});

it('between the readings of a slow sensor a straight line tells the speed, else the channel stays as it is', () => {
  const time = rowsOf(20);
  const slow = time.map((t) => speedAt(Math.floor(t + 1e-9)));
  const line = lineBetweenReadings(time, slow, all(time));
  for (let i = 260; i < 380; i++)
    expect(Math.abs((line[i] as number) - speedAt(time[i] as number))).toBeLessThan(0.05);
  const quick = time.map(speedAt);
  expect(lineBetweenReadings(time, quick, all(time))).toBe(quick);
});
