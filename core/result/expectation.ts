import type { z } from 'zod';

/** What a field must be, as facts: `core/words` says it in each language. */
export type Expectation =
  /** A type by its name in the schema language: number, int, string, boolean, array, object, record, null. */
  | { readonly kind: 'type'; readonly type: string }
  | {
      readonly kind: 'at-most' | 'below' | 'at-least' | 'above';
      readonly of: 'number' | 'text' | 'list';
      readonly limit: number;
    }
  | { readonly kind: 'multiple'; readonly divisor: number }
  | { readonly kind: 'one-of'; readonly values: readonly string[] }
  | { readonly kind: 'unknown-fields'; readonly names: readonly string[] }
  /** A day and a time of day in UTC. */
  | { readonly kind: 'moment' }
  | { readonly kind: 'unit' }
  | { readonly kind: 'own-id' }
  /** What a file of an older version must have held. */
  | { readonly kind: 'promised'; readonly version: number }
  /** Written out as it must look. */
  | { readonly kind: 'form'; readonly form: string }
  /** None of several forms fits, or a pattern does not. */
  | { readonly kind: 'other-form' };

const moments: readonly string[] = ['datetime', 'date', 'time'];

/** What the schema asked for where it found a fault. */
export function expectationOf(issue: z.core.$ZodIssue): Expectation {
  switch (issue.code) {
    case 'invalid_type':
      return { kind: 'type', type: issue.expected };
    case 'too_big':
      return limitOf(issue.inclusive === false ? 'below' : 'at-most', issue.origin, issue.maximum);
    case 'too_small':
      return limitOf(issue.inclusive === false ? 'above' : 'at-least', issue.origin, issue.minimum);
    case 'not_multiple_of':
      return { kind: 'multiple', divisor: issue.divisor };
    case 'invalid_value':
      return { kind: 'one-of', values: issue.values.map(String) };
    case 'unrecognized_keys':
      return { kind: 'unknown-fields', names: issue.keys };
    case 'invalid_format':
      return moments.includes(issue.format) ? { kind: 'moment' } : { kind: 'other-form' };
    case 'custom':
      return issue.params?.expects === 'unit' ? { kind: 'unit' } : { kind: 'other-form' };
    default:
      return { kind: 'other-form' };
  }
}

function limitOf(
  kind: 'at-most' | 'below' | 'at-least' | 'above',
  origin: string,
  limit: number | bigint,
): Expectation {
  const of = origin === 'string' ? 'text' : origin === 'array' || origin === 'set' ? 'list' : 'number';
  return { kind, of, limit: Number(limit) };
}
