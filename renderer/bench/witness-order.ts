import type { VerdictWire } from '../../core/contract/index.ts';

type Witness = VerdictWire['witnesses'][number];

/** What must be seen first comes first: the declared change, then whatever moved, the steady ones last. */
const rank: Readonly<Record<Witness['role'], number>> = {
  'declared-missing': 0,
  'declared-happened': 1,
  moved: 2,
  corrected: 3,
  follows: 4,
  steady: 5,
};

/** Rows that a glance takes in. */
const atAGlance = 8;

/**
 * Witnesses by weight. Whatever is not steady is always shown; steady ones fill up to a handful, and the rest
 * waits behind one line.
 */
export function orderWitnesses(witnesses: readonly Witness[]): { shown: Witness[]; rest: Witness[] } {
  const sorted = [...witnesses].sort((a, b) => rank[a.role] - rank[b.role]);
  const speaking = sorted.filter((w) => w.role !== 'steady').length;
  const cut = Math.max(speaking, atAGlance);
  // One row behind a line takes as much room as the row itself.
  return sorted.length - cut <= 1
    ? { shown: sorted, rest: [] }
    : { shown: sorted.slice(0, cut), rest: sorted.slice(cut) };
}
