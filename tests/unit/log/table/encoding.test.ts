import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  channelOf,
  createLogReader,
  type Log,
  type QuantityId,
  readLog,
} from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

/** Bytes of letters, from the Unicode Consortium's mapping files (VENDORS/MICSFT, VENDORS/APPLE, ISO8859). */
const bytesOf: Record<string, Record<string, number>> = {
  'windows-1252': {
    ä: 0xe4,
    ö: 0xf6,
    ü: 0xfc,
    Ö: 0xd6,
    é: 0xe9,
    è: 0xe8,
    '°': 0xb0,
    '²': 0xb2,
    '\u00a0': 0xa0,
  },
  macintosh: { ä: 0x8a, ö: 0x9a, ü: 0x9f, Ö: 0x85, é: 0x8e, è: 0x8f, '°': 0xa1, '\u00a0': 0xca },
  cp850: { ä: 0x84, ö: 0x94, ü: 0x81, Ö: 0x99, é: 0x82, è: 0x8a, '°': 0xf8, '²': 0xfd, '\u00a0': 0xff },
  'windows-1250': { ę: 0xea, ś: 0x9c, ć: 0xe6, ł: 0xb3, ą: 0xb9, ó: 0xf3, ż: 0xbf, '°': 0xb0 },
  'iso-8859-2': { ę: 0xea, ś: 0xb6, ć: 0xe6, ł: 0xb3, ą: 0xb1, ó: 0xf3, ż: 0xbf, '°': 0xb0 },
  cp852: { ę: 0xa9, ś: 0x98, ć: 0x86, ł: 0x88, ą: 0xa5, ó: 0xa2, ż: 0xbe, '°': 0xf8 },
};

function encoded(text: string, encoding: string): Uint8Array {
  return Uint8Array.from([...text], (c) => {
    const byte = c < '\u0080' ? c.charCodeAt(0) : bytesOf[encoding]?.[c];
    if (byte === undefined) throw new Error(`${c} is not in ${encoding}`);
    return byte;
  });
}

const german =
  'Zeit (s);Motordrehzahl (1/min);Geschwindigkeit (km/h);Zündwinkel (°);Ansauglufttemperatur (°C);Kühlmitteltemperatur (°C);Öltemperatur (°C)';
const french =
  'Temps (s);Régime moteur (tr/min);Vitesse véhicule (km/h);Avance (°);Température admission (°C);Température eau (°C);Température huile (°C)';
const polish =
  'Czas (s);Obroty (rpm);Prędkość (km/h);Kąt zapłonu (°);Temperatura dolotu (°C);Temperatura płynu (°C);Temperatura oleju (°C)';
const meant: QuantityId[] = [
  'engineSpeed',
  'vehicleSpeed',
  'sparkAdvance',
  'intakeTemperature',
  'coolantTemperature',
  'oilTemperature',
];
const rows = (count: number) =>
  Array.from({ length: count }, (_, i) =>
    `${i / 20};${2500 + i};${50 + i / 10};12,5;30;90;95`.replace(/\./g, ','),
  );

const readBytes = (bytes: Uint8Array): Log => unwrap(readLog(bytes, { file: 'accents.csv' }));

describe('a log of one byte a character', () => {
  it.each([
    ['windows-1252', german],
    ['windows-1252', french],
    ['macintosh', german],
    ['macintosh', french],
    ['cp850', german],
    ['cp850', french],
    ['windows-1250', polish],
    ['iso-8859-2', polish],
    ['cp852', polish],
  ])('in %s is read in it: %s', (encoding, header) => {
    const log = readBytes(encoded([header, ...rows(60)].join('\n'), encoding));
    expect(log.style.encoding).toBe(encoding);
    for (const quantity of meant) expect(channelOf(log, quantity)?.quantity, quantity).toBe(quantity);
    expect(log.channels.map((c) => c.column)).toEqual(header.split(';'));
    const isSaid = log.warnings.some((w) => w.code === 'log/encoding-by-words');
    expect(isSaid).toBe(encoding !== 'windows-1252');
  });

  it('is told by units glued to its numbers where the names have no accent', () => {
    const text = [
      'Time;RPM;Coolant temp',
      ...Array.from({ length: 60 }, (_, i) => `${i / 20};3000;9${i % 10} °C`),
    ];
    for (const encoding of ['windows-1252', 'macintosh', 'cp850']) {
      const log = readBytes(encoded(text.join('\n'), encoding));
      expect(log.style.encoding).toBe(encoding);
      expect(channelOf(log, 'coolantTemperature')?.unit).toBe('C');
    }
  });

  it('is told by a word where its letters would do in another encoding too', () => {
    // In windows-1252 the byte of the Polish letter is a raised three.
    const header = 'Czas (s);Obroty (rpm);Temperatura płynu (C)';
    const log = readBytes(
      encoded([header, '0;3000;90', '0,1;3010;90', '0,2;3020;91'].join('\n'), 'windows-1250'),
    );
    expect(log.style.encoding).toBe('windows-1250');
    expect(channelOf(log, 'coolantTemperature')?.column).toBe('Temperatura płynu (C)');
  });

  it('keeps to windows-1252 where nothing tells', () => {
    const log = readBytes(encoded('Time (s);RPM;Pföx\n0;3000;1\n0,1;3010;2\n0,2;3020;3\n', 'windows-1252'));
    expect(log.style.encoding).toBe('windows-1252');
    expect(log.channels[2]?.column).toBe('Pföx');
  });

  it('has the same numbers, bit for bit, in every encoding', () => {
    const cell = fc.double({ noNaN: true, min: -1e6, max: 1e6 });
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 3, maxLength: 30 }), (numbers) => {
        const body = numbers.map(([a, b], i) => [i / 10, a, b].join(';'));
        const text = ['Time (s);Kühlmitteltemperatur (°C);Kanal ä', ...body].join('\n');
        for (const encoding of ['windows-1252', 'macintosh', 'cp850']) {
          const last = readBytes(encoded(text, encoding)).channels[2]?.values ?? [];
          expect([...last]).toEqual(numbers.map(([, b]) => b));
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('Shift_JIS', () => {
  const ofSign = new Map<string, readonly number[]>();
  const decoder = new TextDecoder('shift_jis');
  for (let lead = 0x81; lead <= 0xef; lead++) {
    if (lead >= 0xa0 && lead < 0xe0) continue;
    for (let trail = 0x40; trail <= 0xfc; trail++) {
      const sign = decoder.decode(Uint8Array.of(lead, trail));
      if (sign.length === 1 && !ofSign.has(sign)) ofSign.set(sign, [lead, trail]);
    }
  }
  for (let b = 0xa1; b <= 0xdf; b++) ofSign.set(decoder.decode(Uint8Array.of(b)), [b]);
  const japanese = (text: string) =>
    Uint8Array.from([...text].flatMap((c) => ofSign.get(c) ?? [c.charCodeAt(0)]));
  const rows = Array.from({ length: 60 }, (_, i) => `${i / 20},${3000 + i},100,${i}`);

  it.each([
    ['時間(s),エンジン回転数(rpm),アクセル開度(%),ブースト圧(kPa)'],
    ['時間(s),ｴﾝｼﾞﾝ回転数(rpm),ｱｸｾﾙ開度(%),ﾌﾞｰｽﾄ圧(kPa)'],
    ['時間[s],回転数[rpm],スロットル開度[%],吸気圧[kPa]'],
  ])('is told by the words of the trade: %s', (head) => {
    const log = readBytes(japanese([head, ...rows].join('\n')));
    expect(log.style.encoding).toBe('shift_jis');
    expect(log.channels.map((c) => c.column).join()).toBe(head);
    expect(log.channels.every((c) => c.quantity !== null)).toBe(true);
    expect(log.warnings).toEqual([{ code: 'log/encoding-by-words', facts: { encoding: 'shift_jis' } }]);
  });

  it.each(['|', ';', ',', '\t'])('is parted at %s, where ポ ends in the byte of a stroke', (mark) => {
    const decimal = mark === ';' ? ',' : '.';
    const head = ['時間(s)', 'ポンプ状態', 'エンジン回転数(rpm)', 'ポート圧力(kPa)'];
    const body = Array.from({ length: 12_000 }, (_, i) =>
      [(i / 20).toFixed(2), i % 2 === 0 ? 'ポンプ' : '停止', 3000 + (i % 3000), (i / 4).toFixed(2)]
        .join(mark)
        .replace(/\./g, decimal),
    );
    const bytes = japanese(['ポート試験', head.join(mark), ...body].join('\r\n'));
    const log = readBytes(bytes);
    expect(log.style).toMatchObject({ encoding: 'shift_jis', delimiter: mark, decimal });
    expect(log.channels.map((c) => c.column)).toEqual(head);
    expect(
      [...(channelOf(log, 'engineSpeed')?.values ?? [])].map((w) => Math.round((w * 30) / Math.PI)),
    ).toEqual(body.map((_, i) => 3000 + (i % 3000)));
    expect(log.channels[3]?.values[399]).toBe(99.75);
    // Chunks may cut a character in two.
    const reader = createLogReader({ file: 'a.csv', size: bytes.length });
    for (let at = 0; at < bytes.length; at += 1009) reader.push(bytes.subarray(at, at + 1009));
    expect(unwrap(reader.finish()).channels[3]?.values).toEqual(log.channels[3]?.values);
  });

  it('is not guessed where none of its words is known', () => {
    const log = readBytes(japanese(['Time (s),RPM,甲乙,丙', ...rows].join('\n')));
    expect(log.style.encoding).not.toBe('shift_jis');
    expect(channelOf(log, 'engineSpeed')?.column).toBe('RPM');
  });
});
