import type { VerdictWire } from '../../core/contract/index.ts';
import { declaredChange, type Entry } from '../../core/session/index.ts';
import { type Show, type VerdictPart, verdictSentence } from '../../core/words/index.ts';

/** The verdict as a headline. A refusal's reasons stand in full below it, not in large type. */
export function verdictHeadline(verdict: VerdictWire, after: Entry, show: Show): VerdictPart[] {
  const reasons = verdict.kind === 'not-comparable' ? [] : verdict.reasons;
  return verdictSentence({ ...verdict, reasons }, declaredChange(after), show);
}
