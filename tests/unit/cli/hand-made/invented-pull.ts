/**
 * Half a minute of an invented drive at 20 Hz as rows of text: cruise, one pull in third gear from 8.00 to 18.00 s,
 * coasting. Smooth by design, so that two files of it differ in nothing but how they are written.
 */
export const rate_Hz = 20;
export const rowCount = 600;
export const pull_s: readonly [number, number] = [8, 18];

/** What the columns are called in the plain file. */
export const names = [
  'Time (s)',
  'Engine Speed (rpm)',
  'Pedal (%)',
  'Boost (kPa)',
  'Vehicle Speed (km/h)',
  'Intake Air Temp (°C)',
  'Lambda',
] as const;

export type Row = {
  readonly t: number;
  readonly rpm: number;
  readonly pedal: number;
  readonly boost_kPa: number;
  readonly speed_km_h: number;
  readonly intake_C: number;
  readonly lambda: number;
};

/** Acceleration falls over the pull as it does in a car; its integral is the engine speed. */
function rpmAt(t: number): number {
  const [from, to] = pull_s;
  if (t < from) return 2400 + 10 * Math.sin(t);
  const p = Math.min(t, to) - from;
  const risen = 2400 + 10 * Math.sin(from) + 520 * p - 12 * p * p;
  return t <= to ? risen : risen - 300 * (t - to);
}

export function rowAt(i: number): Row {
  const t = i / rate_Hz;
  const isPull = t >= pull_s[0] && t < pull_s[1];
  const rpm = rpmAt(t);
  return {
    t,
    rpm,
    pedal: isPull ? 100 : t < pull_s[0] ? 18 : 0,
    boost_kPa: isPull ? 110 * (1 - Math.exp(-(t - pull_s[0]) / 0.7)) : -45,
    speed_km_h: rpm * 0.0219,
    intake_C: 31 + (isPull ? 0.8 * (t - pull_s[0]) : 0),
    lambda: isPull ? 0.81 : 1,
  };
}

/** The cells of one row as the plain file has them. */
export function cellsAt(i: number): string[] {
  const row = rowAt(i);
  return [
    row.t.toFixed(3),
    row.rpm.toFixed(1),
    row.pedal.toFixed(1),
    row.boost_kPa.toFixed(2),
    row.speed_km_h.toFixed(3),
    row.intake_C.toFixed(1),
    row.lambda.toFixed(3),
  ];
}

export type Writing = {
  readonly head?: readonly string[];
  readonly separator?: string;
  readonly row?: (cells: string[], i: number) => readonly string[] | null;
  readonly after?: (i: number) => string | null;
  readonly lineEnd?: (line: number) => string;
};

/** The drive as text; every part of how it is written can be changed. */
export function written({
  separator = ',',
  head = [names.join(separator)],
  row = (cells) => cells,
  after = () => null,
  lineEnd = () => '\n',
}: Writing = {}): string {
  const lines = [...head];
  for (let i = 0; i < rowCount; i++) {
    const cells = row(cellsAt(i), i);
    if (cells) lines.push(cells.join(separator));
    const extra = after(i);
    if (extra !== null) lines.push(extra);
  }
  return lines.map((line, i) => line + lineEnd(i)).join('');
}
