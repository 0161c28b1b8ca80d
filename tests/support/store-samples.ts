import { createSession, type Session } from '../../core/session/index.ts';

/** Moments of an invented afternoon, a minute apart. */
export function moment(minute: number): string {
  return new Date(Date.UTC(2027, 2, 14, 10, minute)).toISOString();
}

export function sampleSession(name = 'Fenmoor hatch'): Session {
  return createSession({
    id: 'fenmoor',
    baselineId: 'baseline',
    name,
    now: moment(0),
    car: { mass_kg: 1320 },
  });
}

/** A short log whose content differs by `n`. */
export function sampleLog(n: number): Uint8Array {
  const rows = Array.from({ length: 40 }, (_, i) => `${i / 20},${2000 + i * 100 + n}`);
  return new TextEncoder().encode(`Time (s),Engine speed (rpm)\n${rows.join('\n')}\n`);
}
