import { describe, expect, it } from 'vitest';
import { type ColumnMapping, fingerprintOfColumns, readLog } from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

/** A log of 300 rows: the first half cruises, the second is at full throttle. */
function readColumns(
  columns: Record<string, (share: number, isFull: boolean) => number>,
  mapping: ColumnMapping[] = [],
) {
  const names = Object.keys(columns);
  const rows = Array.from({ length: 300 }, (_, i) => {
    const isFull = i >= 150;
    const share = (isFull ? i - 150 : i) / 149;
    return [(i / 20).toFixed(2), ...names.map((n) => columns[n]?.(share, isFull).toFixed(3))].join(';');
  });
  const text = `Time (s);${names.join(';')}\n${rows.join('\n')}\n`;
  return readLog(new TextEncoder().encode(text), { file: 'a.csv', mapping });
}

function meaning(columns: Parameters<typeof readColumns>[0]): string[] {
  return unwrap(readColumns(columns))
    .channels.slice(1)
    .map((c) => `${c.quantity} ${c.unit}`);
}

const throttle = (_: number, isFull: boolean) => (isFull ? 100 : 15);

describe('richness, the inverse of lambda', () => {
  // Richness is fuel over the fuel that the air would burn, so rich is above 1 (common practice in French).
  it('is not read as lambda, which would show rich as lean', () => {
    const richness = (_: number, isFull: boolean) => (isFull ? 1.22 : 1);
    expect(meaning({ Richesse: richness })).toEqual(['null ']);
    expect(meaning({ 'AFR (richesse)': (_, f) => (f ? 12 : 14.7) })).toEqual(['lambda AFR']);
  });
});

describe('a unit of time', () => {
  it('makes no clock of what it stands behind in a language that nobody knows', () => {
    expect(meaning({ 'Befecskendezes (ms)': (s, isFull) => (isFull ? 12 : 2) + Math.sin(40 * s) })).toEqual([
      'null ms',
    ]);
  });
});

describe('a unit that says what the name leaves out', () => {
  it.each([
    ['Air (°C)', 'intakeTemperature C'],
    ['Fuel (bar)', 'fuelPressure bar'],
    ['Olie (°C)', 'oilTemperature C'],
    ['Oil (bar)', 'null bar'],
  ])('tells the quantity of %s', (name, expected) => {
    expect(meaning({ [name]: (s, isFull) => (isFull ? 4 : 3) + s / 10 })).toEqual([expected]);
  });
});

describe('a pedal without a unit', () => {
  it('that goes to 255 is counted in a byte; one that ends at 100 is not, nor is a load beyond it', () => {
    expect(meaning({ Pedal: (_, isFull) => (isFull ? 255 : 30) })).toEqual(['pedal 1/255']);
    expect(meaning({ Pedal: throttle })).toEqual(['pedal %']);
    expect(meaning({ Load: (_, isFull) => (isFull ? 190 : 30) })).toEqual(['load %']);
  });
});

describe('GPS behind a name', () => {
  it.each([
    ['Vitesse GPS', 'gpsSpeed km/h'],
    ['Velocidad GPS', 'gpsSpeed km/h'],
    ['Speed (GPS)', 'gpsSpeed km/h'],
    ['Altitude GPS', 'altitude m'],
  ])('is a receiver in %s, not grams per second', (name, expected) => {
    expect(meaning({ [name]: (s) => 60 + 40 * s })).toEqual([expected]);
  });
  it.each(['MAF gps', 'Air flow (gps)', 'Fuel flow gps'])('is grams per second in %s', (name) => {
    expect(meaning({ [name]: (s) => 20 + 40 * s })).toEqual([expect.stringMatching(/Flow g\/s$/)]);
  });
});

describe('units told by values', () => {
  it.each<[string, string, (share: number, isFull: boolean) => number]>([
    ['Coolant temp', 'coolantTemperature C', (s) => 80 + 10 * s],
    ['Coolant temp', 'coolantTemperature F', (s) => 180 + 20 * s],
    ['Coolant temp', 'coolantTemperature K', (s) => 350 + 10 * s],
    ['Intake air temp', 'intakeTemperature C', (s) => 25 + 20 * s],
    ['Lambda', 'lambda lambda', (_, f) => (f ? 0.82 : 1)],
    ['Lambda', 'lambda AFR', (_, f) => (f ? 12 : 14.7)],
    ['AFR', 'lambda AFR', (_, f) => (f ? 12 : 14.7)],
    ['AFR', 'lambda lambda', (_, f) => (f ? 0.82 : 1)],
    ['Throttle', 'throttle %', throttle],
    ['Throttle', 'throttle 1', (_, f) => (f ? 1 : 0.15)],
    ['Throttle (%)', 'throttle 1', (_, f) => (f ? 1 : 0.15)],
    ['Throttle angle (deg)', 'throttle deg', (_, f) => (f ? 82 : 12)],
    ['Barometer', 'barometricPressure hPa', () => 1009],
    ['Barometer', 'barometricPressure kPa', () => 100.9],
    ['Barometer', 'barometricPressure inHg', () => 29.8],
    ['Battery voltage', 'batteryVoltage V', () => 14.1],
    ['Engine Speed', 'engineSpeed rpm', (s) => 2000 + 4000 * s],
    ['Engine Speed', 'engineSpeed krpm', (s) => 2 + 4 * s],
    ['RPM', 'engineSpeed rps', (s) => 35 + 70 * s],
    ['RPM (rev/s)', 'engineSpeed rps', (s) => 35 + 70 * s],
    ['Engine speed (1/s)', 'engineSpeed rps', (s) => 35 + 70 * s],
    ['Motordrehzahl [s^-1]', 'engineSpeed rps', (s) => 35 + 70 * s],
    ['Throttle', 'throttle V', (_, f) => (f ? 4.5 : 0.6)],
    ['Pedal', 'pedal mV', (_, f) => (f ? 4150 : 750)],
    ['Boost', 'boost kPa', (s, f) => (f ? 59 * s : -66 + 10 * s)],
    ['Boost', 'boost psi', (s, f) => (f ? 22 * s : -11 + 3 * s)],
    ['Speed', 'null ', (s) => 20_000 + 90_000 * s],
    ['Limiter', 'null ', () => 6600],
    ['Pedal (%/s)', 'null ', (s) => 100 * s],
    ['RPM/s', 'null ', (s) => 1000 * s],
    ['Pedal change %/s', 'null ', (s) => 100 * s],
  ])('%s: %s', (name, expected, values) => {
    expect(meaning({ [name]: values })).toEqual([expected]);
  });

  it('Fahrenheit is likelier where the file states imperial units', () => {
    const warm = (s: number) => 70 + 15 * s;
    expect(
      meaning({ 'Speed (mph)': (s) => 30 + s, 'Boost (psi)': (s) => 5 * s - 3, 'Intake air temp': warm }),
    ).toContain('intakeTemperature F');
    expect(meaning({ 'Speed (km/h)': (s) => 30 + s, 'Intake air temp': warm })).toContain(
      'intakeTemperature C',
    );
  });
});

describe('absolute against gauge', () => {
  const manifold = (unit: number, gauge: boolean) => (s: number, f: boolean) =>
    ((f ? 110 + 90 * s : 40 + 20 * s) - (gauge ? 101 : 0)) * unit;
  it.each([
    ['MAP (kPa)', 'manifoldPressure kPa', manifold(1, false)],
    ['MAP', 'manifoldPressure kPa', manifold(1, false)],
    ['MAP', 'manifoldPressure mbar', manifold(10, false)],
    ['MAP', 'manifoldPressure psi', manifold(0.145, false)],
    ['MAP', 'manifoldPressure bar', manifold(0.01, false)],
    ['MAP (psi)', 'boost psi', manifold(0.145, true)],
    ['Boost', 'boost kPa', manifold(1, true)],
    ['Boost', 'boost psi', manifold(0.145, true)],
    ['Boost', 'boost bar', manifold(0.01, true)],
    ['Boost (kPa)', 'manifoldPressure kPa', manifold(1, false)],
    ['Ladedruck (mbar)', 'manifoldPressure mbar', manifold(10, false)],
    ['Boost (psia)', 'manifoldPressure psi', manifold(0.145, false)],
    ['Manifold pressure (psig)', 'boost psi', manifold(0.145, true)],
    ['Saugrohrdruck relativ (kPa)', 'boost kPa', manifold(1, true)],
  ])('%s: %s', (name, expected, values) => {
    expect(meaning({ Throttle: throttle, [name]: values })[1]).toBe(expected);
  });

  it('gauge boost that never shows a vacuum stays gauge', () => {
    expect(
      meaning({ Throttle: throttle, 'Boost (kPa)': (s, f) => (f ? Math.min(120, 240 * s) : 0) })[1],
    ).toBe('boost kPa');
  });
});

describe('corrections by hand', () => {
  it('win over name and unit', () => {
    const log = unwrap(
      readColumns({ 'Ext 1': (s) => 4 * s, boost: (s) => 20 * s }, [
        { column: 'Ext 1', quantity: 'fluidPressure', unit: 'bar' },
        { column: 'boost', quantity: null, unit: '' },
      ]),
    );
    expect(log.channels[1]).toMatchObject({ quantity: 'fluidPressure', unit: 'bar', confidence: 1 });
    expect(log.channels[1]?.values[149]).toBeCloseTo(4e5, 6);
    expect(log.channels[2]?.quantity).toBeNull();
    expect(log.channels[2]?.values[149]).toBeCloseTo(20, 6);
  });

  it('with a unit of another kind are a problem that names the column', () => {
    const result = readColumns({ boost: (s) => s }, [{ column: 'boost', quantity: 'boost', unit: 'km/h' }]);
    expect(result).toEqual({
      ok: false,
      problems: [
        {
          code: 'log/mapping-unit',
          facts: { unit: 'km/h', quantity: 'boost' },
          where: { file: 'a.csv', column: 'boost' },
        },
      ],
    });
  });

  it('for a column that is not there are said', () => {
    const log = unwrap(readColumns({ boost: (s) => s }, [{ column: 'Gone', quantity: null, unit: '' }]));
    expect(log.warnings).toContainEqual({ code: 'log/mapping-unused', facts: { column: 'Gone' } });
  });

  it('fit logs with the same columns in any order', () => {
    expect(fingerprintOfColumns(['Time', 'RPM'])).toBe(fingerprintOfColumns(['RPM', 'Time']));
    expect(fingerprintOfColumns(['Time', 'RPM'])).not.toBe(fingerprintOfColumns(['Time', 'RPM (2)']));
    expect(fingerprintOfColumns([])).toMatch(/^[0-9a-f]{16}$/);
  });
});

describe('a column that never changes while the engine turns up and down', () => {
  const rpm = (s: number) => 1500 + 4500 * s;
  it('is no channel, and its reason says so', () => {
    const log = unwrap(readColumns({ RPM: rpm, 'Pedal (%)': () => 0, 'Speed (km/h)': () => 0 }));
    for (const channel of log.channels.slice(2)) {
      expect(channel.quantity).toBeNull();
      expect(channel.reason).toEqual({ code: 'log/column-stands-still', facts: {} });
    }
  });
  it('is kept where it is a pedal held down throughout', () => {
    expect(meaning({ RPM: rpm, 'Pedal (%)': () => 100 })).toContain('pedal %');
  });
  it('stays what a hand made it', () => {
    const log = unwrap(
      readColumns({ RPM: rpm, 'Speed (km/h)': () => 0 }, [
        { column: 'Speed (km/h)', quantity: 'vehicleSpeed', unit: 'km/h' },
      ]),
    );
    expect(log.channels[2]?.quantity).toBe('vehicleSpeed');
  });
});

it('a speed without any unit is taken for km/h, and that is said', () => {
  const note = { code: 'log/speed-unit-assumed', facts: { column: 'Road speed', unit: 'km/h' } };
  expect(unwrap(readColumns({ 'Road speed': (s) => 60 * s })).warnings).toContainEqual(note);
  expect(unwrap(readColumns({ 'Speed (mph)': (s) => 60 * s })).warnings).toEqual([]);
});

it('a unit is told in spite of single readings that are out of all reason', () => {
  let row = 0;
  const spiked = (value: number) => (row++ % 60 === 17 ? 65_535 : value);
  expect(meaning({ Throttle: (_, f) => spiked(f ? 1 : 0.15) })).toEqual(['throttle 1']);
  expect(meaning({ MAP: (s, f) => spiked(f ? 1.1 + 0.9 * s : 0.4) })).toEqual(['manifoldPressure bar']);
});

it('unknown columns are kept as they stand', () => {
  const log = unwrap(readColumns({ 'Quux (zork)': (s) => s }));
  expect(log.channels[1]).toMatchObject({ column: 'Quux (zork)', quantity: null, confidence: 0 });
  expect(log.channels[1]?.values[149]).toBe(1);
});

it('knock retard is a size, however the file signs it', () => {
  const log = unwrap(readColumns({ 'Knock retard (deg)': (s) => -3 * s }));
  expect(log.channels[1]?.values[149]).toBeCloseTo((3 * Math.PI) / 180, 9);
});

it.each([
  ['Power (whp)', 'wheelPower hp'],
  ['Power [rwhp]', 'wheelPower hp'],
  ['WHP', 'wheelPower hp'],
  ['Power (hp)', 'enginePower hp'],
  ['Axle Torque (Nm)', 'wheelTorque Nm'],
  ['Hub Torque (lb-ft)', 'wheelTorque lb ft'],
  ['Nabenmoment (Nm)', 'wheelTorque Nm'],
  ['Torque (Nm)', 'engineTorque Nm'],
  ['トルク（kgf・m）', 'engineTorque kgf m'],
])('%s says by its words or its unit where it was measured: %s', (header, told) => {
  expect(meaning({ [header]: (s) => 200 + 50 * s })).toEqual([told]);
});

it.each([
  ['MAF (g/s)', 'airMassFlow g/s'],
  ['Luftmasse [kg/h]', 'airMassFlow kg/h'],
  ['Mass Airflow (lb/min)', 'airMassFlow lb/min'],
  ['MAF (kg/s)', 'airMassFlow kg/s'],
  ['Airflow (m3/h)', 'null'],
  ['Airflow (m³/h)', 'null'],
  ['Airflow (CFM)', 'null'],
  ['Air flow (l/s)', 'null'],
  ['Air volume flow', 'null'],
  ['Air mass (mg/stroke)', 'null'],
  ['MAF (V)', 'null'],
  ['MAF voltage', 'null'],
])('air by mass is no air by volume, by stroke or in volts: %s is %s', (header, told) => {
  expect(meaning({ [header]: (s) => 80 + 50 * s })[0]).toMatch(new RegExp(`^${told}`));
});

it('an air meter without a unit that never passes 5 is its volts rather than a flow', () => {
  expect(meaning({ 'Air mass flow': (s) => 1 + 3.8 * s })[0]).toMatch(/^null/);
  expect(meaning({ 'Air mass flow': (s) => 5 + 180 * s })).toEqual(['airMassFlow g/s']);
});
