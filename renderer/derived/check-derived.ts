import { type DerivedChannel, deriveChannel, type FormulaParser, type Log } from '../../core/log/index.ts';
import type { Problem } from '../../core/result/index.ts';

/** What a formula came to on a log: the range of its values, or what is wrong with it. */
export type Check =
  | { readonly kind: 'works'; readonly low: number; readonly high: number }
  | { readonly kind: 'no-value' }
  | { readonly kind: 'wrong'; readonly problems: readonly Problem[] };

/** Each channel checked in order, able to use those before it. */
export function checkDerived(log: Log, derived: readonly DerivedChannel[], parser: FormulaParser): Check[] {
  let current = log;
  return derived.map((one): Check => {
    const found = deriveChannel(current, one, parser);
    if (!found.ok) return { kind: 'wrong', problems: found.problems };
    current = { ...current, channels: [...current.channels, found.value] };
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const v of found.value.values) {
      if (v < low) low = v;
      if (v > high) high = v;
    }
    return low <= high ? { kind: 'works', low, high } : { kind: 'no-value' };
  });
}

/**
 * Whether a fault lies in the formula itself. A name that this log does not have may stand in another, so it is
 * told but does not stop anybody.
 */
export function isFormulaWrong(check: Check | undefined): boolean {
  return check?.kind === 'wrong' && check.problems.some((p) => p.code !== 'log/formula-symbol-unknown');
}

/** Whether what a person entered differs from what is kept; a row that was only added holds nothing yet. */
export function isOther(kept: readonly DerivedChannel[], now: readonly DerivedChannel[]): boolean {
  const entered = (all: readonly DerivedChannel[]) =>
    all
      .filter((d) => d.name.trim() !== '' || d.formula.trim() !== '')
      .map(({ name, formula, kind, quantity }) => [name.trim(), formula.trim(), kind, quantity]);
  return JSON.stringify(entered(kept)) !== JSON.stringify(entered(now));
}
