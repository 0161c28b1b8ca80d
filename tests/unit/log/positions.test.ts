import { describe, expect, it } from 'vitest';
import { channelOf, headingOver, type Log, readLog, waysByHeading } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';

const degree = Math.PI / 180;
const metre = 1 / 111_195;

type Writing = {
  readonly latitude?: string;
  readonly longitude?: string;
  readonly written?: (value: number, isLatitude: boolean) => string;
  readonly start?: readonly [number, number];
};

/** 600 m on a bearing of 30 degrees, or the one that is given. */
function driven(
  {
    latitude = 'Latitude',
    longitude = 'Longitude',
    written = (v) => v.toFixed(6),
    start = [52.5, 13.4],
  }: Writing,
  bearing = 30,
): Log {
  const rows = [['Time (s)', 'Speed (km/h)', latitude, longitude].join('\t')];
  let [lat, lon] = start;
  for (let i = 0; i < 300; i++) {
    lat += 2 * metre * Math.cos(bearing * degree);
    lon += (2 * metre * Math.sin(bearing * degree)) / Math.cos(lat * degree);
    const east = ((lon + 540) % 360) - 180;
    rows.push([(i / 10).toFixed(1), '72.0', written(lat, true), written(east, false)].join('\t'));
  }
  return unwrap(readLog(new TextEncoder().encode(rows.join('\n')), { file: 'drive.csv' }));
}

const all = (log: Log) => ({ from: 0, to: log.time.length });
const bearingOf = (log: Log) => (headingOver(log, all(log)) ?? Number.NaN) / degree;

/** Degrees and minutes in one number. */
const minutes = (v: number, isLatitude: boolean) => {
  const whole = Math.floor(Math.abs(v));
  const rest = ((Math.abs(v) - whole) * 60).toFixed(5).padStart(8, '0');
  return `${String(whole).padStart(isLatitude ? 2 : 3, '0')}${rest}`;
};

describe('a position is known by its header', () => {
  it.each([
    ['Latitude', 'Longitude'],
    ['GPS_Latitude', 'GPS_Longitude'],
    ['GPS Lat (deg)', 'GPS Long (deg)'],
    ['lat', 'lng'],
    ['Breitengrad', 'Längengrad'],
    ['Breite [Grad]', 'Länge [Grad]'],
    ['Geogr. Breite (°)', 'Geogr. Länge (°)'],
    ['GPS-Breite', 'GPS-Länge'],
    ['GPS Breite', 'GPS Laenge'],
  ])('%s and %s', (latitude, longitude) => {
    const log = driven({ latitude, longitude });
    expect(channelOf(log, 'latitude')?.column).toBe(latitude);
    expect(channelOf(log, 'longitude')?.column).toBe(longitude);
    // A receiver's column is not its speed.
    expect(channelOf(log, 'gpsSpeed')).toBeUndefined();
    expect(bearingOf(log)).toBeCloseTo(30, 0);
  });
});

describe('a position in degrees and minutes', () => {
  it.each<[string, (v: number, isLatitude: boolean) => string]>([
    ['as plain numbers', minutes],
    ['with the letter behind', (v, isLatitude) => `${minutes(v, isLatitude)} ${isLatitude ? 'N' : 'E'}`],
    [
      'with the letter behind a comma',
      (v, isLatitude) => `${minutes(v, isLatitude)},${isLatitude ? 'N' : 'E'}`,
    ],
  ])('is read in degrees, %s', (_, written) => {
    const log = driven({ written });
    expect(channelOf(log, 'latitude')?.values[0]).toBeCloseTo(52.5, 3);
    expect(channelOf(log, 'longitude')?.values[0]).toBeCloseTo(13.4, 3);
    expect(bearingOf(log)).toBeCloseTo(30, 0);
  });

  it('is told by longitude alone near the equator, and over a whole degree', () => {
    const log = driven({ written: minutes, start: [0.998, 6.7] });
    expect(channelOf(log, 'latitude')?.values[0]).toBeCloseTo(0.998, 3);
    expect(bearingOf(log)).toBeCloseTo(30, 0);
  });

  it('of the southern and western half is mirrored where no letter is written, which leaves ways as they are', () => {
    const start = [-33.9, -70.6] as const;
    const [out, back] = [driven({ written: minutes, start }, 30), driven({ written: minutes, start }, 210)];
    expect(waysByHeading([out, back].map((log) => headingOver(log, all(log))))).toEqual([1, -1]);
  });

  it('5230.12345 is 52.5020575 degrees', () => {
    const log = driven({ written: (_, isLatitude) => (isLatitude ? '5230.12345' : '01324.00000') });
    expect(channelOf(log, 'latitude')?.values[0]).toBeCloseTo(52.5020575, 9);
    expect(channelOf(log, 'longitude')?.values[0]).toBeCloseTo(13.4, 9);
  });
});

const half = (v: number, isLatitude: boolean, east = 'E') =>
  isLatitude ? (v < 0 ? 'S' : 'N') : v < 0 ? 'W' : east;
const split = (v: number) => {
  const whole = Math.floor(Math.abs(v));
  const min = (Math.abs(v) - whole) * 60;
  return { whole, min, s: (min - Math.floor(min)) * 60 };
};
const decimalMinutes = (v: number) => `${split(v).whole}°${split(v).min.toFixed(4)}'`;
const seconds = (v: number, marks: readonly [string, string, string]) => {
  const { whole, min, s } = split(v);
  return `${whole}${marks[0]}${String(Math.floor(min)).padStart(2, '0')}${marks[1]}${s.toFixed(3)}${marks[2]}`;
};

describe('a position written as text', () => {
  const writings: [string, (v: number, isLatitude: boolean) => string][] = [
    ["52°30.1234' N", (v, l) => `${decimalMinutes(v)} ${half(v, l)}`],
    ["52° 30,1234' N", (v, l) => `${decimalMinutes(v).replace('.', ',').replace('°', '° ')} ${half(v, l)}`],
    ["N 52°30.1234'", (v, l) => `${half(v, l)} ${decimalMinutes(v)}`],
    ['N52.500123', (v, l) => `${half(v, l)}${Math.abs(v).toFixed(6)}`],
    ['52,500123 N', (v, l) => `${Math.abs(v).toFixed(6).replace('.', ',')} ${half(v, l)}`],
    ['52.500123° N', (v, l) => `${Math.abs(v).toFixed(6)}° ${half(v, l)}`],
    ['52 30 06.123 N', (v, l) => `${seconds(v, [' ', ' ', ''])} ${half(v, l)}`],
    ['52:30:06.123 N', (v, l) => `${seconds(v, [':', ':', ''])} ${half(v, l)}`],
    ['52-30-06.123N', (v, l) => `${seconds(v, ['-', '-', ''])}${half(v, l)}`],
    ['52°30\'06.123" N', (v, l) => `${seconds(v, ['°', "'", '"'])} ${half(v, l)}`],
    ['52° 30′ 06.123″ N', (v, l) => `${seconds(v, ['° ', '′ ', '″'])} ${half(v, l)}`],
    ['52d30m06.123s N', (v, l) => `${seconds(v, ['d', 'm', 's'])} ${half(v, l)}`],
    ['-52:30:06.123', (v) => `${v < 0 ? '-' : ''}${seconds(v, [':', ':', ''])}`],
  ];
  const starts = [
    [52.5, 13.4],
    [-33.9, -70.6],
    // Over a whole degree.
    [-0.001, 6.999],
  ] as const;
  it.each(writings)('%s is read in degrees, on each half of the earth', (_, written) => {
    for (const start of starts) {
      const log = driven({ written, start });
      const plain = driven({ written: (v) => v.toFixed(6), start });
      for (const axis of ['latitude', 'longitude'] as const) {
        const [read, told] = [channelOf(log, axis), channelOf(plain, axis)];
        expect(read?.flags.some((f) => f !== 0)).toBe(false);
        for (const at of [0, 150, 299])
          expect(read?.values[at]).toBeCloseTo(told?.values[at] ?? Number.NaN, 5);
      }
    }
  });

  it('52°30\'06" N is 52.501667 degrees', () => {
    const log = driven({ written: (_, l) => (l ? '52°30\'06" N' : '13°24\'00" E') });
    expect(channelOf(log, 'latitude')?.values[0]).toBeCloseTo(52.501667, 6);
    expect(channelOf(log, 'longitude')?.values[0]).toBeCloseTo(13.4, 9);
  });

  it.each([
    ['Geogr. Länge', 13.4],
    ['Longitude', 13.4],
    ['Longitud', -13.4],
    ['Longitudine', -13.4],
  ])('the letter O under %s gives %f: Ost to a German, oeste and ovest elsewhere', (longitude, expected) => {
    const log = driven({ longitude, written: (_, l) => (l ? '52,5 N' : '13,4 O') });
    expect(channelOf(log, 'longitude')?.values[0]).toBeCloseTo(expected, 9);
  });

  it.each([
    "52°70.5' N", // no minute
    "52.5°30' N", // decimals before the last part
    'N 52.5 N',
    'lost',
  ])('%s is none', (cell) => {
    const log = driven({ written: (v, l) => (l ? cell : v.toFixed(6)) });
    expect(channelOf(log, 'latitude')).toBeUndefined();
  });

  it('is known by the correction by hand where the header says nothing', () => {
    const rows = ['Time (s)\tSpeed (km/h)\tWhere 1'];
    for (let i = 0; i < 50; i++) rows.push(`${i / 10}\t72\t52 30 ${10 + i / 2} N`);
    const bytes = new TextEncoder().encode(rows.join('\n'));
    const mapping = [{ column: 'Where 1', quantity: 'latitude', unit: '' }] as const;
    const log = unwrap(readLog(bytes, { file: 'drive.csv', mapping }));
    expect(channelOf(log, 'latitude')?.values[0]).toBeCloseTo(52.5 + 10 / 3600, 9);
  });

  it('keeps its rows where some end in a remark', () => {
    const rows = ['Time (s);Speed (km/h);Latitude'];
    for (let i = 0; i < 50; i++)
      rows.push(`${i / 10};72;52°30.${10 + i}' N${i % 10 === 3 ? ';over the bridge' : ''}`);
    const log = unwrap(readLog(new TextEncoder().encode(rows.join('\n')), { file: 'drive.csv' }));
    expect(log.time).toHaveLength(50);
    expect(log.warnings).toEqual([]);
  });
});

describe('a position whose letter stands in a column of its own', () => {
  const santiago = [-33.9, -70.6] as const;
  type Fields = (lat: string, ns: string, lon: string, ew: string) => string[];
  const behind: Fields = (lat, ns, lon, ew) => [lat, ns, lon, ew];

  /** 300 rows about a place, with the cells of each in some order. */
  function table(
    header: readonly string[],
    { start = santiago as readonly [number, number], fields = behind, letter = half, written = minutes } = {},
  ): Log {
    const rows = [['Time (s)', 'Speed (km/h)', ...header, 'Boost (kPa)'].join(',')];
    for (let i = 0; i < 300; i++) {
      const [lat, lon] = [start[0] + i * 1e-5, start[1] + i * 1e-5];
      const cells = fields(written(lat, true), letter(lat, true), written(lon, false), letter(lon, false));
      rows.push([(i / 10).toFixed(1), '72.0', ...cells, '101.3'].join(','));
    }
    return unwrap(readLog(new TextEncoder().encode(rows.join('\n')), { file: 'drive.csv' }));
  }
  const placeOf = (log: Log, at = 0) =>
    (['latitude', 'longitude'] as const).map((axis) => channelOf(log, axis)?.values[at] ?? Number.NaN);
  const expectAt = (log: Log, [lat, lon]: readonly number[], at = 0) => {
    expect(placeOf(log, at)[0]).toBeCloseTo(lat ?? Number.NaN, 4);
    expect(placeOf(log, at)[1]).toBeCloseTo(lon ?? Number.NaN, 4);
  };

  it.each<[string[], Fields]>([
    [['Lat', 'N/S', 'Lon', 'E/W'], behind],
    [['Latitude', 'NS', 'Longitude', 'EW'], behind],
    [['Latitude', 'Lat Dir', 'Longitude', 'Lon Dir'], behind],
    [['Latitude', 'Latitude N/S', 'Longitude', 'Longitude E/W'], behind],
    [['GPS_Lat', 'Hemisphere', 'GPS_Lon', 'Hemisphere'], behind],
    [['Breite', 'N/S', 'Länge', 'O/W'], behind],
    [['Latitude', '', 'Longitude', ''], behind],
    [['N/S', 'Lat', 'E/W', 'Lon'], (lat, ns, lon, ew) => [ns, lat, ew, lon]],
    [['Lat', 'Lon', 'N/S', 'E/W'], (lat, ns, lon, ew) => [lat, lon, ns, ew]],
  ])('is south and west of nought under %j', (header, fields) => {
    const log = table(header, { fields });
    expectAt(log, santiago);
    expectAt(log, [santiago[0] + 299e-5, santiago[1] + 299e-5], 299);
    // The letters stay a text of the file.
    expect(log.channels.filter((c) => c.quantity !== null)).toHaveLength(5);
  });

  it('is north and east of it where the letters say so, in degrees and in minutes', () => {
    for (const written of [minutes, (v: number) => Math.abs(v).toFixed(6)])
      for (const start of [
        [52.5, 13.4],
        [-33.9, 151.2],
        [40.7, -74],
      ] as const)
        expectAt(table(['Lat', 'N/S', 'Lon', 'E/W'], { start, written }), start);
  });

  it('crosses the equator and the meridian where the letters change', () => {
    const log = table(['Lat', 'N/S', 'Lon', 'E/W'], {
      start: [-0.001, -0.002],
      written: (v) => Math.abs(v).toFixed(6),
    });
    expectAt(log, [-0.001, -0.002]);
    expectAt(log, [0.00199, 0.00099], 299);
  });

  it('takes the letter before it where a cell is empty, and keeps a sign that is written', () => {
    let row = 0;
    const now = (v: number, l: boolean) => (row++ % 8 > 1 ? '' : half(v, l));
    const log = table(['Lat', 'N/S', 'Lon', 'E/W'], { letter: now });
    expectAt(log, [santiago[0] + 150e-5, santiago[1] + 150e-5], 150);
    expectAt(table(['Lat', 'N/S', 'Lon', 'E/W'], { written: (v) => v.toFixed(6) }), santiago);
  });

  it('reads the O of Ost and of oeste by the header', () => {
    const letter = (v: number, l: boolean) => (l ? half(v, l) : 'O');
    expectAt(table(['Breite', 'N/S', 'Länge', 'O/W'], { letter, start: [52.5, 13.4] }), [52.5, 13.4]);
    expectAt(table(['Latitud', 'N/S', 'Longitud', 'E/O'], { letter, start: [40.4, -3.7] }), [40.4, -3.7]);
    expectAt(table(['Lat', 'N/S', 'Lon', 'E/O'], { letter, start: [48.4, -4.5] }), [48.4, -4.5]);
  });

  it.each<[string, string, (i: number) => string]>([
    ['Mode', 'is normal or sport', () => 'S'],
    ['Gear lever', 'is neutral', () => 'S'],
    ['N/S', 'says other things too', (i) => (i % 3 === 0 ? 'S' : 'A')],
    ['E/W', 'is of the other axis', () => 'W'],
  ])('is left alone where %s beside it %s', (name, _, cell) => {
    let i = 0;
    const log = table(['Lat', name, 'Lon'], { fields: (lat, _ns, lon) => [lat, cell(i++), lon] });
    expect(placeOf(log)[0]).toBeCloseTo(33.9, 4);
  });

  it('is the same where the newest row comes first', () => {
    const rows = Array.from(
      { length: 300 },
      (_, i) => `${i / 10},72,3354.${1000 + i},${i < 100 ? 'S' : 'N'},07036.0,W`,
    );
    const bytes = new TextEncoder().encode(
      ['Time (s),Speed (km/h),Lat,N/S,Lon,E/W', ...rows.reverse()].join('\n'),
    );
    const { values } = channelOf(unwrap(readLog(bytes, { file: 'drive.csv' })), 'latitude') ?? { values: [] };
    expect([...values].map((v) => v < 0)).toEqual(Array.from({ length: 300 }, (_, i) => i < 100));
  });
});

it('numbers that are no position on earth are none', () => {
  const log = driven({ written: (v) => (v * 1e5).toFixed(0) });
  expect(channelOf(log, 'latitude')).toBeUndefined();
  expect(headingOver(log, all(log))).toBeNull();
});

it('a way over the line of 180 degrees is a short one', () => {
  expect(bearingOf(driven({ start: [52.5, 179.998] }, 90))).toBeCloseTo(90, 0);
});

/** A heading column, with the speed that the car had [km/h]. */
function headed(header: string, rows: readonly (readonly [speed: number, heading: number])[]): Log {
  const text = rows.map(
    ([speed, heading], i) => `${(i / 10).toFixed(1)},${speed.toFixed(1)},${heading.toFixed(1)}`,
  );
  const whole = [`Time (s),Speed (km/h),${header}`, ...text].join('\n');
  return unwrap(readLog(new TextEncoder().encode(whole), { file: 'drive.csv' }));
}

/** About a bearing, a few degrees to either side. */
const along = (bearing: number, speed = 90) =>
  Array.from({ length: 60 }, (_, i) => [speed + i / 10, (bearing + 360 + 4 * Math.sin(i)) % 360] as const);

describe('a logged heading', () => {
  it.each(['Heading', 'GPS Heading (deg)', 'Course', 'Course over ground (deg)', 'COG', 'Bearing', 'Kurs'])(
    'is known by %s',
    (header) => {
      expect(channelOf(headed(header, along(40)), 'heading')?.column).toBe(header);
    },
  );
  it.each(['GPS-Kurs', 'Kurs über Grund [°]', 'Fahrtrichtung'])('and in German by %s', (header) => {
    expect(channelOf(headed(header, along(40)), 'heading')?.column).toBe(header);
  });

  it.each(['Heading (true)', 'Heading (true) [°]', 'Cap (deg)', 'Track [°]', 'Richtung (Grad)', 'GPS Track'])(
    'and by %s',
    (header) => {
      const log = headed(header, along(40));
      expect(channelOf(log, 'heading')?.column).toBe(header);
      // A receiver's column is not its speed.
      expect(channelOf(log, 'gpsSpeed')).toBeUndefined();
    },
  );

  /** Beside a speed by satellite, or without one. */
  const beside = (header: string, value: (i: number) => number | string, speed = 'GPS speed (km/h)') => {
    const rows = Array.from({ length: 60 }, (_, i) => `${i / 10},${90 + i / 10},${value(i)}`);
    const bytes = new TextEncoder().encode([`Time (s),${speed},${header}`, ...rows].join('\n'));
    return channelOf(unwrap(readLog(bytes, { file: 'drive.csv' })), 'heading')?.column;
  };
  const turning = (i: number) => 300 + i / 2;

  it.each(['Track', 'Richtung', 'Cap', 'Cap GPS', 'Rotta', 'Koers', 'True track', '進行方向'])(
    'without a unit by %s, where a receiver wrote the log',
    (header) => {
      expect(beside(header, turning)).toBe(header);
    },
  );

  it.each<[string, string, (i: number) => number | string]>([
    ['Track', 'names a circuit', () => 'Fenmoor ring'],
    ['Track', 'counts laps', (i) => Math.floor(i / 20)],
    ['Track', 'numbers a circuit', () => 37],
    ['Track', 'is a way driven in metres', (i) => 20 * i],
    ['Track (m)', 'is a way driven', (i) => 3 * i],
    ['Richtung', 'is forward or back', (i) => (i > 30 ? -1 : 1)],
    ['Cap (%)', 'is what a tank holds', turning],
    ['Fuel cap', 'is another thing', turning],
    ['Track temp', 'is a temperature', (i) => 30 + i / 10],
    ['Wind direction', 'is of the wind', turning],
    ['Windrichtung', 'is of the wind', turning],
    ['Heading', 'is no angle', (i) => 3000 * i],
  ])('%s that %s is none', (header, _, value) => {
    expect(beside(header, value)).toBeUndefined();
  });

  it.each(['Track', 'Cap', 'Richtung'])('%s is none where no receiver wrote the log', (header) => {
    expect(beside(header, turning, 'Speed (km/h)')).toBeUndefined();
  });

  it('the course of a pedal is no heading', () => {
    expect(channelOf(headed('Course pédale (%)', along(40)), 'heading')).toBeUndefined();
  });

  it('tells ways over the change from 359 to 0 degrees', () => {
    const logs = [0, 180, 2, 358].map((bearing) => headed('Heading', along(bearing)));
    const headings = logs.map((log) => headingOver(log, all(log)));
    expect((headings[0] ?? Number.NaN) / degree).toBeCloseTo(0, 0);
    expect(waysByHeading(headings)).toEqual([1, -1, 1, 1]);
  });

  it('is not believed at standstill, where a receiver draws any', () => {
    const still = Array.from({ length: 200 }, (_, i) => [i % 2, (200 + 7 * i) % 360] as const);
    const log = headed('Heading', [...still, ...along(40)]);
    expect((headingOver(log, all(log)) ?? Number.NaN) / degree).toBeCloseTo(40, 0);
    const parked = headed('Heading', still);
    expect(headingOver(parked, all(parked))).toBeNull();
  });

  it('says nothing of a drive around a bend', () => {
    const round = Array.from({ length: 360 }, (_, i) => [60 + i / 100, i] as const);
    const log = headed('Heading', round);
    expect(headingOver(log, all(log))).toBeNull();
  });
});
