import { type Note, ok, type Problems, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import { type FluidSystemModel, groupOf, type ListedNozzle, type NozzleGroup } from './fluid-system.ts';
import { practice } from './practice.ts';

export type NozzleFit = 'too-small' | 'matched' | 'oversize' | 'much-too-large';

/** One nozzle or several together, against the need at peak. */
export type NozzleChoice = {
  /** Names as listed; a name stands twice where the nozzle is fitted twice. */
  readonly names: readonly string[];
  readonly group: NozzleGroup;
  /** At full setting and peak boost [m^3/s]. */
  readonly flow: number;
  /** Delivered over needed. */
  readonly feed: number;
  readonly fit: NozzleFit;
  readonly notes: readonly Note[];
};

export function nozzleFit(feed: number): NozzleFit {
  if (feed < 1 - practice.matchedWithin) return 'too-small';
  if (feed <= 1 + practice.matchedWithin) return 'matched';
  return feed < practice.muchTooLarge ? 'oversize' : 'much-too-large';
}

const fitNote = {
  'too-small': 'injection/nozzle-too-small',
  matched: 'injection/nozzle-matched',
  oversize: 'injection/nozzle-oversize',
  'much-too-large': 'injection/nozzle-much-too-large',
} as const;

/** What follows what: too much can be metered away or started later, too little can't be made up. */
const fitOrder: readonly NozzleFit[] = ['matched', 'oversize', 'much-too-large', 'too-small'];

/** Every single, pair and triple of the list; a nozzle again only as often as there are of it. */
export function combinations(listed: readonly ListedNozzle[]): readonly (readonly ListedNozzle[])[] {
  const found: (readonly ListedNozzle[])[] = [];
  const grow = (from: number, taken: readonly ListedNozzle[]) => {
    for (const [i, nozzle] of listed.entries()) {
      if (i < from) continue;
      const next = [...taken, nozzle];
      if (next.filter((n) => n === nozzle).length > nozzle.most) continue;
      found.push(next);
      if (next.length < 3) grow(i, next);
    }
  };
  grow(0, []);
  return found;
}

/** Distance from the need, and a little for each further nozzle: one more thing to clog and to seal. */
function score(choice: NozzleChoice): number {
  return (
    10 * fitOrder.indexOf(choice.fit) + Math.abs(Math.log(choice.feed)) + 0.03 * (choice.names.length - 1)
  );
}

/**
 * Every combination of up to three nozzles, best first.
 *
 * Matched (within 15 % of the need) before oversize before much too large before too small; within a class the
 * nearest, fewer nozzles first where they are about as near. So between two sizes the larger is taken, with a
 * later start, as practice has it.
 *
 * @param need  fluid at peak [m^3/s]
 * Errors: delivery/pump-weaker-than-boost where the pump serves none of them.
 * Source: common practice for the classes; flow by delivery's operating point.
 */
export function rankNozzles(
  system: FluidSystemModel,
  peakBoost: number,
  need: number,
): Result<readonly NozzleChoice[]> {
  const choices: NozzleChoice[] = [];
  let problems: Problems | null = null;
  for (const nozzles of combinations(system.nozzles)) {
    const group = groupOf(nozzles);
    const point = system.point(group, peakBoost, 1);
    if (!point.ok) {
      problems = point.problems;
      continue;
    }
    const { flow } = point.value;
    const feed = flow / need;
    const fit = nozzleFit(feed);
    const notes: Note[] = [{ code: fitNote[fit], facts: { delivered: flow, need, feed } }];
    if (nozzles.length > 1)
      notes.push({ code: 'injection/nozzle-several', facts: { count: nozzles.length } });
    choices.push({ names: nozzles.map((n) => n.name), group, flow, feed, fit, notes });
  }
  if (choices.length === 0 && problems) return { ok: false, problems };
  choices.sort((a, b) => score(a) - score(b));
  const [best, ...others] = choices;
  if (!best) return ok([]);
  return ok([{ ...best, notes: [...best.notes, ...reasons(best, others)] }, ...others]);
}

/** Why the first is first. */
function reasons(best: NozzleChoice, others: readonly NozzleChoice[]): Note[] {
  if (best.fit === 'too-small') return [{ code: 'injection/none-large-enough', facts: { feed: best.feed } }];
  if (best.fit === 'matched') return [];
  const smaller = others.filter((c) => c.feed < 1).sort((a, b) => b.feed - a.feed)[0];
  const notes: Note[] = [];
  if (smaller)
    notes.push({
      code: 'injection/larger-of-two',
      facts: { smaller: smaller.names.join(' + '), smallerFeed: smaller.feed, feed: best.feed },
    });
  return notes;
}

/** Where delivered over needed of a choice comes from. */
export function explainNozzleChoice(choice: NozzleChoice, need: number): Explanation {
  return {
    id: 'injection/nozzle-choice',
    formula: 'r = q / q_need, q at full setting and peak boost',
    tex: String.raw`r = \frac{q(p_\mathrm{peak})}{q_\mathrm{need}}`,
    inputs: [
      { symbol: 'q', value: choice.flow, kind: 'volumeFlow' },
      { symbol: 'q_need', value: need, kind: 'volumeFlow' },
      { symbol: 'r', value: choice.feed, kind: 'number' },
    ],
    source:
      'q: orifice equation at the pressure that pump, line and check valve leave at peak boost; matched within 15 %, much too large from twice: common practice',
    validRange: [
      { symbol: 'r', from: 1 - practice.matchedWithin, to: 1 + practice.matchedWithin, kind: 'number' },
    ],
  };
}
