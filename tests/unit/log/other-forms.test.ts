import { expect, it } from 'vitest';
import { createLogReader } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';

it('a long log with one value of one channel a row is read whole, in whatever parts it comes', () => {
  const times = 130_000;
  const rows = ['Time;Channel;Value;Unit'];
  for (let i = 0; i < times; i++) {
    rows.push(`${(i / 20).toFixed(2)};Engine speed;${2000 + (i % 3000)};rpm`);
    rows.push(`${(i / 20).toFixed(2)};Vehicle speed;${100 + (i % 50)};km/h`);
    rows.push(`${(i / 20).toFixed(2)};Pedal;${i % 100};%`);
  }
  const bytes = new TextEncoder().encode(`${rows.join('\n')}\n`);
  const reader = createLogReader({ file: 'long.csv', size: bytes.length });
  for (let at = 0; at < bytes.length; at += 500_000) {
    expect(reader.push(bytes.subarray(at, at + 500_000))).toBeNull();
  }
  const log = unwrap(reader.finish());
  expect(log.warnings[0]).toEqual({ code: 'log/rewritten', facts: { form: 'value-per-row' } });
  expect(log.time).toHaveLength(times);
  expect(log.time.at(-1)).toBeCloseTo((times - 1) / 20, 6);
});
