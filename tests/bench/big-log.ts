import { closeSync, existsSync, openSync, statSync, writeSync } from 'node:fs';

/**
 * Writes a log of 20 numeric columns and about so many bytes: an invented car that cruises and pulls in turn.
 * A file that is already there is kept.
 */
export function writeBigLog(path: string, megabytes: number): void {
  if (existsSync(path) && statSync(path).size > megabytes * 0.95e6) return;
  const names = [
    'Time (s)',
    'Engine Speed (rpm)',
    'Vehicle Speed (km/h)',
    'Pedal (%)',
    'Throttle (%)',
    'Boost (kPa)',
    'Manifold Pressure (kPa)',
    'Intake Air Temp (C)',
    'Coolant Temp (C)',
    'Lambda',
    'Lambda Target',
    'Spark Advance (deg)',
    'Knock Retard (deg)',
    'Injector Duty (%)',
    'Fuel Pressure (kPa)',
    'Mass Air Flow (g/s)',
    'Oil Temp (C)',
    'Battery (V)',
    'Wastegate Duty (%)',
    'Gear',
  ];
  const file = openSync(path, 'w');
  let text = `${names.join(',')}\n`;
  let written = 0;
  let random = 1;
  const noise = () => {
    random = (Math.imul(random, 1664525) + 1013904223) >>> 0;
    return random / 4294967296 - 0.5;
  };
  // Twenty seconds of cruising, eight of a pull, two of coasting down.
  for (let row = 0; written < megabytes * 1e6; row++) {
    const t = row / 100;
    const phase = t % 30;
    const isPull = phase >= 20 && phase < 28;
    const rpm = isPull ? 2500 + 500 * (phase - 20) : phase >= 28 ? 6500 - 2000 * (phase - 28) : 2500;
    const boost = isPull ? Math.min(120, 40 * (phase - 20)) : -40;
    const cells = [
      t.toFixed(2),
      (rpm + 10 * noise()).toFixed(0),
      (rpm * 0.0235 + 0.2 * noise()).toFixed(1),
      (isPull ? 100 : phase >= 28 ? 0 : 22 + noise()).toFixed(1),
      (isPull ? 99.6 : 14 + noise()).toFixed(1),
      (boost + noise()).toFixed(1),
      (boost + 101.3 + noise()).toFixed(1),
      (31 + 5 * noise()).toFixed(1),
      (88 + noise()).toFixed(1),
      ((isPull ? 0.82 : 1) + 0.02 * noise()).toFixed(3),
      (isPull ? 0.82 : 1).toFixed(3),
      (isPull ? 14 : 32 + noise()).toFixed(1),
      '0.0',
      (rpm * 0.01 + noise()).toFixed(1),
      (350 + 4 * noise()).toFixed(1),
      (rpm * 0.03 + noise()).toFixed(2),
      (95 + noise()).toFixed(1),
      (14.1 + 0.1 * noise()).toFixed(2),
      (isPull ? 45 + noise() : 0).toFixed(1),
      '3',
    ];
    text += `${cells.join(',')}\n`;
    if (text.length > 1 << 20) {
      writeSync(file, text);
      written += text.length;
      text = '';
    }
  }
  writeSync(file, text);
  closeSync(file);
}
