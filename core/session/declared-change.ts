import { type ChangeDeclaration, declareChange } from '../compare/index.ts';
import { siOf, type TypedValue, units } from '../units/index.ts';
import type { Entry } from './entry.ts';

function siOrNull(typed: TypedValue | null | undefined): number | null {
  return typed && units.has(typed.unit) ? siOf(typed) : null;
}

/** What an entry declares, for the judge; null for the baseline. */
export function declaredChange(entry: Entry): ChangeDeclaration | null {
  if (entry.kind === 'baseline') return null;
  const from = siOrNull(entry.change?.from);
  const to = siOrNull(entry.change?.to);
  // Spark is planned in steps: an angle without a start is the step itself.
  if (entry.kind === 'spark' && from === null) return declareChange('spark', { size: to });
  return declareChange(entry.kind, { from, to });
}
