import type { ShownKind } from './unit-choice.ts';

const fileUnits: Partial<Record<ShownKind, string>> = {
  boost: 'kPa',
  pressure: 'kPa',
  fluidPressure: 'kPa',
  temperature: 'C',
  angle: 'deg',
  share: '%',
  lambda: 'lambda',
  volumeFlow: 'mL/min',
  number: '',
};

/** The unit that a kind has in JSON and CSV, whatever the reader's own; empty for a kind that is written bare. */
export function fileUnit(kind: ShownKind): string {
  return fileUnits[kind] ?? '';
}
