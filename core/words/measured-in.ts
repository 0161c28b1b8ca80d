import { kindMeasuredIn } from '../log/index.ts';
import type { Kind } from '../units/index.ts';

/**
 * What a formula gives, as the kind is called where a person chooses it; its base units, `s^-2`, where no kind has
 * them.
 *
 * @param text  as dimensionText has it
 */
export function measuredIn(text: string, kinds: Readonly<Record<Kind, string>>): string {
  const kind = kindMeasuredIn(text);
  return kind === null ? text : kinds[kind];
}
