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

  it('of the southern and western half is mirrored where letters stand elsewhere, which leaves ways as they are', () => {
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
