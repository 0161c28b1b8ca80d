import { readFileSync } from 'node:fs';
import { expect } from 'vitest';

/** One published value: see the README beside the list for what status and tolerance mean. */
export type CheckValue = {
  readonly id: string;
  readonly topic: string;
  readonly quantity: string;
  readonly inputs: Record<string, unknown>;
  readonly expected: unknown;
  readonly unit: string;
  readonly tolerance: unknown;
  readonly source: string;
  readonly status: 'confirmed' | 'computed' | 'from-memory' | 'common practice';
  readonly note: string;
};

/** All published check values; the list is never adjusted to what the code returns. */
export const checkValues: readonly CheckValue[] = JSON.parse(
  readFileSync(new URL('../reference/check-values.json', import.meta.url), 'utf8'),
);

/** The entries whose id matches; none is an error, so that a renamed list cannot pass unseen. */
export function checkValuesWhere(match: (value: CheckValue) => boolean, atLeast = 1): readonly CheckValue[] {
  const found = checkValues.filter(match);
  if (found.length < atLeast)
    throw new Error(`expected ${atLeast} check values or more, found ${found.length}`);
  return found;
}

export function checkValue(id: string): CheckValue {
  const found = checkValues.find((v) => v.id === id);
  if (!found) throw new Error(`no check value "${id}"`);
  return found;
}

/** Expects `actual` within the published tolerance, naming the source when it fails. */
export function expectWithin(
  actual: number,
  check: { expected: number; tolerance: number; source: string; id?: string },
): void {
  const off = Math.abs(actual - check.expected);
  expect(
    off,
    `${check.id ?? ''} ${actual} against ${check.expected} ± ${check.tolerance} (${check.source})`,
  ).toBeLessThanOrEqual(check.tolerance);
}
