import { describe, expect, it } from 'vitest';
import { channelOf, findPulls, readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';

const read = (text: string | Uint8Array) =>
  readLog(typeof text === 'string' ? new TextEncoder().encode(text) : text, { file: 'a.csv' });

function rows(count: number, row: (i: number) => string): string {
  return Array.from({ length: count }, (_, i) => row(i)).join('\n');
}

const meanings = (text: string) =>
  Object.fromEntries(unwrap(read(text)).channels.map((c) => [c.column, `${c.quantity} ${c.unit}`]));

describe('a log nobody prepared', () => {
  it('is read with semicolons, decimal commas, mph, psi and AFR', () => {
    const comma = (x: number, digits = 2) => x.toFixed(digits).replace('.', ',');
    const text = `Time (s);Engine Speed (rpm);Speed (mph);Boost (psi);AFR;Throttle (%)\n${rows(200, (i) => [comma(i / 20), 2000 + i, comma(20 + i / 10), comma(-5 + i / 10), comma(14.7 - i / 100), i > 100 ? 100 : 10].join(';'))}`;
    const log = unwrap(read(text));
    expect(log.style.delimiter).toBe(';');
    expect(log.style.decimal).toBe(',');
    expect(meanings(text)).toEqual({
      'Time (s)': 'time s',
      'Engine Speed (rpm)': 'engineSpeed rpm',
      'Speed (mph)': 'vehicleSpeed mph',
      'Boost (psi)': 'boost psi',
      AFR: 'lambda AFR',
      'Throttle (%)': 'throttle %',
    });
    expect(log.time[20]).toBe(1);
    expect(channelOf(log, 'vehicleSpeed')?.values[100]).toBeCloseTo(30 * 0.44704, 9);
    expect(channelOf(log, 'lambda')?.values[0]).toBeCloseTo(1, 12);
    expect(channelOf(log, 'throttle')?.values[150]).toBe(1);
    expect(findPulls(log).pulls.length).toBe(0);
  });

  it('is read with a units row, a preamble and German words', () => {
    const text = `Fahrzeug;Fenmoor\nDatum;14.03.2027\n\nZeit;Motordrehzahl;Ladedruck;Kühlmitteltemperatur;Gaspedal\ns;1/min;mbar;°C;%\n${rows(60, (i) => [`${i / 10}`.replace('.', ','), 2000 + 10 * i, 900 + 20 * i, 88, 100].join(';'))}`;
    expect(meanings(text)).toMatchObject({
      Zeit: 'time s',
      Motordrehzahl: 'engineSpeed rpm',
      Kühlmitteltemperatur: 'coolantTemperature C',
      Gaspedal: 'pedal %',
    });
    expect(unwrap(read(text)).style.headerLine).toBe(4);
    expect(unwrap(read(text)).style.firstDataLine).toBe(6);
  });
});

describe('bad input gives one problem', () => {
  const code = (input: string | Uint8Array) => {
    const result = read(input);
    return result.ok ? 'ok' : result.problems.map((p) => p.code).join();
  };
  it.each([
    ['empty', '', 'log/empty'],
    ['only blanks', ' \n\n\t\n', 'log/empty'],
    ['an image', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0), 'log/not-a-table'],
    ['a web page', '<!DOCTYPE html><html><body>1,2,3</body></html>', 'log/not-a-table'],
    ['JSON', '{"a": [1, 2, 3]}', 'log/not-a-table'],
    ['XML', '<?xml version="1.0"?><log><row a="1"/></log>', 'log/not-a-table'],
    ['only text', 'the quick brown fox\njumps over the dog\n', 'log/only-text'],
    ['one row', 'Time,RPM\n0,1000\n', 'log/too-few-rows'],
    [
      'no time column',
      `RPM,Boost\n${rows(50, (i) => `${1000 + ((i * 7919) % 501)},${i % 3}`)}`,
      'log/no-time',
    ],
    ['null bytes', `Time,RPM\n${rows(50, (i) => `${i},${i}\0`)}`, 'log/null-bytes'],
    [
      '5,000 columns',
      `${rows(3, () => Array.from({ length: 5000 }, (_, i) => i).join(','))}`,
      'log/too-many-columns',
    ],
    ['a 10 MB line', '1,2,3,'.repeat(1_700_000), 'log/line-too-long'],
  ])('%s', (_, input, expected) => {
    expect(code(input)).toBe(expected);
  });
});

it('a quoted UTF-16 log larger than the head that is looked at first is read whole', () => {
  const text = `"Time (s)","RPM"\n${rows(20_000, (i) => `"${i / 20}","${2000 + (i % 700)}"`)}\n`;
  const bytes = new Uint8Array(new Uint16Array([0xfeff, ...[...text].map((c) => c.charCodeAt(0))]).buffer);
  expect(unwrap(read(bytes)).time.length).toBe(20_000);
});

it('a log with Japanese names and wide brackets is read whole', () => {
  const head = '時間(s),ｴﾝｼﾞﾝ回転数(rpm),車速（km/h）,アクセル開度(%),ブースト圧(kPa),水温（℃）';
  const lines = Array.from({ length: 40 }, (_, i) => `${i / 20},${2000 + i},${60 + i},100,${i},88`);
  const log = unwrap(readLog(new TextEncoder().encode([head, ...lines].join('\n')), { file: 'a.csv' }));
  expect(log.channels.map((c) => [c.quantity, c.unit])).toEqual([
    ['time', 's'],
    ['engineSpeed', 'rpm'],
    ['vehicleSpeed', 'km/h'],
    ['pedal', '%'],
    ['boost', 'kPa'],
    ['coolantTemperature', 'C'],
  ]);
});
