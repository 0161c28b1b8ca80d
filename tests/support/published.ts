import { it } from 'vitest';
import { type CheckValue, checkValue, expectWithin } from './check-values.ts';

/** A number of a check value's inputs; a missing one is a fault in the test. */
export function inputNumber(value: CheckValue, name: string): number {
  const input = value.inputs[name];
  if (typeof input !== 'number') throw new Error(`${value.id} has no number "${name}"`);
  return input;
}

/** A word of a check value's inputs. */
export function inputText(value: CheckValue, name: string): string {
  const input = value.inputs[name];
  if (typeof input !== 'string') throw new Error(`${value.id} has no text "${name}"`);
  return input;
}

type Answer = number | readonly number[] | Readonly<Record<string, number>>;

function parts(answer: unknown): readonly [string, number][] {
  if (typeof answer === 'number') return [['', answer]];
  if (typeof answer !== 'object' || answer === null) throw new Error('neither a number nor several');
  return Object.entries(answer).map(([key, value]) => {
    if (typeof value !== 'number') throw new Error(`"${key}" is not a number`);
    return [key, value];
  });
}

function toleranceOf(value: CheckValue, key: string): number {
  if (typeof value.tolerance === 'number') return value.tolerance;
  const own = (value.tolerance as Record<string, unknown>)[key];
  if (typeof own !== 'number') throw new Error(`${value.id} has no tolerance for "${key}"`);
  return own;
}

export type Deviation = { readonly id: string; readonly share: number; readonly off: number };

/** One test per published value: every number of `expected` within its own tolerance. */
export function itAgrees(id: string, answer: (value: CheckValue) => Answer, seen: Deviation[] = []): void {
  const value = checkValue(id);
  it(`${value.quantity}: ${id} (${value.source}; ${value.status})`, () => {
    const got = parts(answer(value));
    const wanted = parts(value.expected);
    if (got.length !== wanted.length) throw new Error(`${id}: ${got.length} numbers for ${wanted.length}`);
    for (const [key, expected] of wanted) {
      const actual = got.find(([k]) => k === key)?.[1];
      if (actual === undefined) throw new Error(`${id}: nothing for "${key}"`);
      const tolerance = toleranceOf(value, key);
      seen.push({ id, off: actual - expected, share: Math.abs(actual - expected) / tolerance });
      expectWithin(actual, { id, expected, tolerance, source: value.source });
    }
  });
}
