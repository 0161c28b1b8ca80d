import { describe, expect, it } from 'vitest';
import { findPulls, readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';

/** A minute at 20 Hz with a pull from 10.00 to 20.00 s, its clock written as given. */
function timed(header: string, written: (seconds: number) => string, start_s: number) {
  const rows = Array.from({ length: 1200 }, (_, i) => {
    const isPull = i >= 200 && i < 400;
    const rpm = isPull ? 2500 + 18 * (i - 200) : i < 200 ? 2500 : 3000;
    return [written(start_s + i / 20), rpm, isPull ? 100 : 15, (rpm * 0.022).toFixed(2)].join(',');
  });
  const text = [`${header},RPM,Pedal (%),Speed (km/h)`, ...rows].join('\n');
  return unwrap(readLog(new TextEncoder().encode(text), { file: 'a.csv' }));
}

const two = (n: number) => String(Math.floor(n)).padStart(2, '0');
const parts = (t: number) => [Math.floor(t / 3600), Math.floor(t / 60) % 60, t % 60] as const;
const hour12 = (t: number) => ((parts(t)[0] + 11) % 12) + 1;
const twelve =
  (behind = '') =>
  (t: number) =>
    `${hour12(t)}:${two(parts(t)[1])}:${parts(t)[2].toFixed(2).padStart(5, '0')}${behind}`;
const digits = (t: number) =>
  `${two(parts(t)[0])}${two(parts(t)[1])}${parts(t)[2].toFixed(2).padStart(5, '0')}`;
const oneOClock = 13 * 3600;
const clock = (hours: number, minutes: number, seconds: number) => hours * 3600 + minutes * 60 + seconds;

describe('a clock runs on through a pull', () => {
  it.each<[string, string, (t: number) => string, number]>([
    ['at one o’clock, of twelve hours and no half of the day', 'Time', twelve(), oneOClock - 15],
    ['at one o’clock, the half of the day in Spanish', 'Time', twelve(' p. m.'), oneOClock - 15],
    [
      'at one o’clock, the half of the day behind a blank that does not break',
      'Time',
      twelve('\u00a0p.\u00a0m.'),
      oneOClock - 15,
    ],
    ['at a full minute, in digits of the day', 'UTC', digits, clock(14, 3, 45)],
    ['at a full hour, in digits of the day', 'Time', digits, clock(14, 59, 45)],
    ['at midnight, in digits of the day', 'UTC', digits, clock(23, 59, 45)],
    [
      'at a full minute before ten, whose nought no number keeps',
      'UTC',
      (t) => String(Number(digits(t))),
      clock(0, 3, 45),
    ],
  ])('%s', (_, header, written, start_s) => {
    const day = 86_400;
    const log = timed(header, (t) => written(t % day), start_s);
    expect(log.segments).toHaveLength(1);
    expect(log.warnings).toEqual([]);
    const { pulls } = findPulls(log);
    expect(pulls.map((p) => (log.time[p.from] ?? Number.NaN) - (log.time[0] ?? 0))).toEqual([
      expect.closeTo(10, 1),
    ]);
    expect(log.time.at(-1)).toBeCloseTo((log.time[0] ?? Number.NaN) + 59.95, 4);
  });
});

it('140359.95 in a column of the time of day is 50639.95 s', () => {
  expect(timed('UTC', digits, clock(14, 3, 59.95)).time[0]).toBeCloseTo(50_639.95, 6);
});

it.each([
  ['rests for a minute', (i: number) => (i < 600 ? i / 20 : i / 20 + 60)],
  ['rests for 40 s before a full minute', (i: number) => (i < 1100 ? i / 20 : i / 20 + 43)],
  ['runs past 60 in its last digits', (i: number) => 120 + i / 20],
])('a stop watch that %s counts seconds all the same', (_, seconds) => {
  let i = 0;
  const log = timed('Time', () => seconds(i++).toFixed(2), 0);
  expect(log.time.at(-1)).toBeCloseTo(seconds(1199), 2);
});

it('a clock that starts anew before noon is no turn of a dial', () => {
  const log = timed(
    'Time',
    (t) => (t < clock(11, 0, 20) ? twelve()(t) : twelve()(t - 9 * 3600)),
    clock(11, 0, 0),
  );
  expect(log.warnings.map((w) => w.code)).toEqual(['log/clock-reset']);
});
