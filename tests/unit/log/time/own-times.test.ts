import { describe, expect, it } from 'vitest';
import { channelOf, findPulls, readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

type Part = { readonly rate: number; readonly from_s: number; readonly value: (t: number) => number };

const onset_s = 12;
const lift_s = 18;
const isFloored = (t: number) => t >= onset_s && t < lift_s;
const kmh = (t: number) =>
  t < onset_s ? 50 : t < lift_s ? 50 + 12 * (t - onset_s) : 50 + 12 * (lift_s - onset_s) - 3 * (t - lift_s);

const engine: Part = { rate: 20, from_s: 0.01, value: (t) => 45 * kmh(t) };
const road: Part = { rate: 10, from_s: 0.037, value: kmh };
const pedal: Part = { rate: 50, from_s: 0.003, value: (t) => (isFloored(t) ? 100 : 15) };

/** Each part under its own time, from the first row on: short ones leave their last rows empty. */
function written(parts: readonly (Part & { readonly names: string })[], seconds = 25): string {
  const columns = parts.map(({ rate, from_s, value }) =>
    Array.from({ length: seconds * rate }, (_, i) => {
      const t = from_s + i / rate;
      return `${t.toFixed(3)},${value(t).toFixed(2)}`;
    }),
  );
  const rows = Math.max(...columns.map((c) => c.length));
  const lines = Array.from({ length: rows }, (_, i) => columns.map((c) => c[i] ?? ',').join(','));
  return `${[parts.map((p) => p.names).join(','), ...lines].join('\n')}\n`;
}

const read = (text: string) => unwrap(readLog(new TextEncoder().encode(text), { file: 'times.csv' }));
const [rpm, speed, foot] = [
  { ...engine, names: 'Time (s),Engine speed (rpm)' },
  { ...road, names: 'Time (s),Vehicle speed (km/h)' },
  { ...pedal, names: 'Time (s),Pedal (%)' },
];
const joined = (count: number, column: string) => ({ code: 'log/times-joined', facts: { count, column } });

describe('columns that each have a time of their own', () => {
  it.each([
    ['the fastest last', [rpm, speed, foot], 'Time (s) (3)'],
    ['the fastest first', [foot, rpm, speed], 'Time (s)'],
  ])('come onto the time with the most readings, %s', (_, parts, column) => {
    const log = read(written(parts));
    expect(log.warnings).toContainEqual(joined(3, column));
    expect(log.time).toHaveLength(25 * 50);
    const values = (quantity: 'engineSpeed' | 'vehicleSpeed') => channelOf(log, quantity)?.values ?? [];
    const [turning, rolling] = [values('engineSpeed'), values('vehicleSpeed')];
    for (let i = 0; i < log.time.length; i++) {
      const t = log.time[i] as number;
      if (t < 0.05 || t > 24.85) continue;
      // Half of a reading's step lies under a corner of the speed.
      expect(Math.abs((rolling[i] as number) - kmh(t) / 3.6)).toBeLessThan(0.1);
      expect(Math.abs((turning[i] as number) - (45 * kmh(t) * Math.PI) / 30)).toBeLessThan(2);
    }
    const [pull, ...others] = findPulls(log).pulls;
    expect(others).toEqual([]);
    expect(Math.abs((pull?.start_s ?? 0) - onset_s)).toBeLessThan(0.05);
    expect(Math.abs((pull?.end_s ?? 0) - lift_s)).toBeLessThan(0.05);
  });

  it('hold nothing before their first reading and after their last', () => {
    const log = read(written([foot, { ...speed, from_s: 1.02 }]));
    const values = channelOf(log, 'vehicleSpeed')?.values ?? new Float64Array();
    expect(values.slice(0, 51).every(Number.isNaN)).toBe(true);
    expect(values[52]).toBeCloseTo(50 / 3.6, 3);
    const late = read(
      written(
        [foot, speed].map((p, i) => (i === 0 ? p : { ...p, rate: 10 })),
        25,
      ),
    );
    expect(channelOf(late, 'vehicleSpeed')?.values.at(-1)).toBeNaN();
  });
});

describe('a log stays as it is', () => {
  const untouched = (text: string) => {
    const log = read(text);
    expect(log.warnings.filter(({ code }) => code === 'log/times-joined')).toEqual([]);
    return log;
  };

  it('where all of its times say the same', () => {
    const log = untouched(written([rpm, { ...speed, rate: 20, from_s: 0.01 }]));
    expect(log.channels).toHaveLength(4);
  });

  it('where the second time is another clock: of the day, or begun at another moment', () => {
    untouched(written([rpm, { ...speed, rate: 20, from_s: 54_000 }]));
    untouched(written([rpm, { ...speed, rate: 20, from_s: 5 }]));
  });

  it('where the second time has no columns of its own, or only one time is named', () => {
    untouched(written([rpm, { ...speed, value: (t) => t, names: 'GPS time (s),Time (s)' }]));
    untouched(written([rpm, { ...speed, names: 'Distance (m),Vehicle speed (km/h)' }]));
  });

  it('where a time stands still or goes back, as one that is held does', () => {
    untouched(
      written([rpm, { ...speed, rate: 20, names: 'Time (s),Vehicle speed (km/h)' }]).replace(
        '0.537,',
        '0.237,',
      ),
    );
  });
});
