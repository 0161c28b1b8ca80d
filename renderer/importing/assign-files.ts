import type { Session } from '../../core/session/index.ts';

/** Where a log goes: an entry's id, a change that is written down with it, or nowhere yet. */
export type Target = string;
export const newChange: Target = 'new change';
export const noEntry: Target = 'none';

/** Whether so many logs were given other places that nobody should have to choose them again. */
export function isMuchChosen(first: readonly Target[], now: readonly Target[]): boolean {
  // One is chosen again in a breath (common practice).
  return now.filter((target, i) => target !== first[i]).length > 1;
}

/**
 * A first guess for files that come together: the baseline first where it has none, then the entry that waits,
 * then a new change. Files are taken by name, as loggers count up.
 */
export function guessTargets(
  files: readonly { readonly name: string }[],
  ledger: Session['ledger'],
  selectedId: string | null,
): Target[] {
  const baseline = ledger[0];
  const waiting =
    ledger.find((e) => e.id === selectedId && e.runs.length === 0) ?? ledger.find((e) => e.runs.length === 0);
  const order = files.map((f, i) => ({ name: f.name, i })).sort((a, b) => naturally(a.name, b.name));
  const targets: Target[] = files.map(() => newChange);
  for (const [place, { i }] of order.entries()) {
    if (baseline && baseline.runs.length === 0) targets[i] = place === 0 ? baseline.id : newChange;
    else if (waiting) targets[i] = waiting.id;
  }
  return namedSides(files, baseline?.id ?? newChange, targets, baseline?.runs.length === 0);
}

/** File names that say `before` and `after` beat the alphabet: after comes first there. */
function namedSides(
  files: readonly { readonly name: string }[],
  baselineId: string,
  targets: Target[],
  isBaselineOpen: boolean,
): Target[] {
  const sides = files.map(({ name }) =>
    /before|baseline|vorher|ausgang/i.test(name) ? 'before' : /after|nachher/i.test(name) ? 'after' : null,
  );
  if (!isBaselineOpen || !sides.includes('before')) return targets;
  return targets.map((_, i) => (sides[i] === 'before' ? baselineId : newChange));
}

function naturally(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}
