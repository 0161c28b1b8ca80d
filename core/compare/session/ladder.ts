import { intervalOf } from '../statistics/index.ts';
import type { SessionFit } from './session-fit.ts';
import type { Ladder, LadderPart, SessionEntry } from './session-table.ts';

/**
 * From the baseline to the last kept entry, step by step along what each stands on, summed by kind.
 *
 * Each step is the difference of two levels in W, nuisances held equal, so that the parts add up to the whole
 * exactly. A step that could not be judged as what it was meant to be is a part of its own: the power is there,
 * nobody can say what brought it.
 *
 * @param refused  entries whose verdict is "not comparable"
 * Null where the chain is broken by an entry without pulls, or no repeatability is known.
 */
export function ladderOf(
  entries: readonly SessionEntry[],
  fit: SessionFit,
  refused: ReadonlySet<string>,
): Ladder | null {
  const { day } = fit;
  const chain = chainOf(entries, fit);
  const first = chain[0];
  const last = chain[chain.length - 1];
  if (!day || !first || !last || chain.length < 2) return null;
  const base = fit.setupOf(first.id) as number;
  const start = fit.meanOf(first.id) as number;
  const unit = (setup: number, weight: number) => {
    const weights = new Array<number>(fit.setups).fill(0);
    weights[setup] = (weights[setup] as number) + weight;
    weights[base] = (weights[base] as number) - weight;
    return weights;
  };
  /** Level of an entry [W], every nuisance as it was at the baseline. */
  const levels = new Map(
    chain.map((e) => [e.id, start * Math.exp(day.combine(unit(fit.setupOf(e.id) as number, 1)).difference)]),
  );
  const levelOf = (entry: SessionEntry) => levels.get(entry.id) as number;
  /** A sum of levels in W with its interval, by the slope of exp at each level. */
  const sumOf = (terms: readonly { entry: SessionEntry; sign: 1 | -1 }[]) => {
    const weights = new Array<number>(fit.setups).fill(0);
    let effect = 0;
    for (const { entry, sign } of terms) {
      effect += sign * levelOf(entry);
      unit(fit.setupOf(entry.id) as number, sign * levelOf(entry)).forEach((w, i) => {
        weights[i] = (weights[i] as number) + w;
      });
    }
    const { difference, stories } = day.combine(weights);
    // Each bound as far from the mean of the stories as theirs; the slope of exp has moved that mean to `effect`.
    const [low, high] = intervalOf(stories);
    return { effect, interval95: [effect + low - difference, effect + high - difference] as const };
  };
  const kinds = new Map<LadderPart['kind'], SessionEntry[]>();
  for (const entry of chain.slice(1)) {
    const kind = refused.has(entry.id) ? 'not-judged' : (entry.declared?.kind ?? 'other');
    kinds.set(kind, [...(kinds.get(kind) ?? []), entry]);
  }
  const previous = new Map(chain.slice(1).map((entry, i) => [entry.id, chain[i] as SessionEntry]));
  const parts = [...kinds].map(([kind, steps]): LadderPart => {
    const terms = steps.flatMap((entry) => [
      { entry, sign: 1 as const },
      { entry: previous.get(entry.id) as SessionEntry, sign: -1 as const },
    ]);
    return { kind, entryIds: steps.map((e) => e.id), ...sumOf(terms) };
  });
  const whole = sumOf([
    { entry: last, sign: 1 },
    { entry: first, sign: -1 },
  ]);
  return { fromId: first.id, toId: last.id, ...whole, band_rad_s: fit.grid.band, parts };
}

/** Baseline first: back from the last kept entry along what each stands on; driving again is no step. */
function chainOf(entries: readonly SessionEntry[], fit: SessionFit): SessionEntry[] {
  const byId = new Map(entries.map((e) => [e.id, e]));
  const isStep = (e: SessionEntry) => e.repeats === null && e.isKept && fit.setupOf(e.id) !== null;
  const chain: SessionEntry[] = [];
  let at: SessionEntry | undefined = entries.findLast(isStep);
  while (at && !chain.includes(at)) {
    chain.unshift(at);
    if (at.against === null) return chain;
    const next: SessionEntry | undefined = byId.get(at.against);
    const stands: SessionEntry | undefined = next?.repeats ? byId.get(next.repeats) : next;
    if (!stands || fit.setupOf(stands.id) === null) return [];
    at = stands;
  }
  return [];
}
