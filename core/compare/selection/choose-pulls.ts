import type { Note } from '../../result/index.ts';
import { trustedBand } from '../band/common-band.ts';
import type { PullEvidence } from '../evidence/pull-evidence.ts';
import type { PullFacts, Side } from '../notes.ts';
import { mean, median } from '../statistics/index.ts';
import { limitedFrom, type Trouble, troublesOf } from './pull-trouble.ts';
import { isGearOpen, partedByTurns, turnsOf } from './same-gear.ts';

/** A pull that counts, with the engine speeds over which its power can be trusted. */
export type ChosenPull = {
  readonly pull: PullEvidence;
  readonly side: Side;
  readonly place: number;
  readonly band: readonly [number, number];
};

export type Choice = {
  readonly before: readonly ChosenPull[];
  readonly after: readonly ChosenPull[];
  readonly leftOut: readonly Note[];
  readonly reasons: readonly Note[];
};

/** A pull much shorter than its fellows would cut the band for all (common practice: under 60 % of the usual). */
const shortShare = 0.6;

/**
 * Which pulls count, and why the others don't. A pull in trouble (knock, limiter, spin, traction control) is
 * left out where its side keeps two sound ones and most of its pulls; where most of a side is in trouble the
 * trouble is how that setup runs, and the entries can't be compared.
 */
export function choosePulls(sides: {
  readonly before: readonly PullEvidence[];
  readonly after: readonly PullEvidence[];
}): Choice {
  const leftOut: Note[] = [];
  const reasons: Note[] = [];
  const pools: Record<Side, ChosenPull[]> = { before: [], after: [] };
  for (const side of ['before', 'after'] as const) {
    const seen: PullEvidence[] = [];
    sides[side].forEach((pull, i) => {
      const facts: PullFacts = { pullId: pull.id, side, place: i + 1 };
      const band = limitedBand(pull);
      if (seen.some((other) => isSamePull(other, pull)))
        leftOut.push({ code: 'compare/left-out-twice', facts });
      else if (!pull.isComplete) leftOut.push({ code: 'compare/left-out-incomplete', facts });
      else if (!band) leftOut.push({ code: 'compare/left-out-no-power', facts });
      else pools[side].push({ pull, side, place: i + 1, band });
      seen.push(pull);
    });
  }
  if (pools.before.some((b) => pools.after.some((a) => isSamePull(a.pull, b.pull)))) {
    reasons.push({ code: 'compare/same-pull', facts: {} });
  }
  const isOneGear = keepOneGear(pools, leftOut, reasons) && keepOneRatio(pools, leftOut, reasons);
  if (isOneGear && isGearOpen(pullsOf(pools))) leftOut.push({ code: 'compare/gear-open', facts: {} });
  leaveOutShort(pools, leftOut);
  leaveOutTroubled(pools, isOneGear, leftOut, reasons);
  return { before: pools.before, after: pools.after, leftOut, reasons };
}

export function factsOf({ pull, side, place }: ChosenPull): PullFacts {
  return { pullId: pull.id, side, place };
}

/** The trusted band, ended where the limiter came in near the top. */
function limitedBand(pull: PullEvidence): readonly [number, number] | null {
  const band = trustedBand(pull);
  if (!band) return null;
  const limit = limitedFrom(pull, band);
  return limit === null ? band : [band[0], limit];
}

/** One recording handed in twice would count as repeatability that was never driven. */
function isSamePull(a: PullEvidence, b: PullEvidence): boolean {
  if (a === b) return true;
  const x = a.power.wheelPower;
  const y = b.power.wheelPower;
  return x.length > 0 && x.length === y.length && x.every((value, i) => Object.is(value, y[i]));
}

/** By number, as far as numbers are known. False where the sides share no gear. */
function keepOneGear(pools: Record<Side, ChosenPull[]>, leftOut: Note[], reasons: Note[]): boolean {
  const usual = (side: Side) => mostCommon(pools[side].flatMap((c) => c.pull.gear ?? []));
  const before = usual('before');
  const after = usual('after');
  if (before === null || after === null) return true;
  const inBoth = pools.before
    .map((c) => c.pull.gear)
    .filter((gear): gear is number => gear !== null && pools.after.some((a) => a.pull.gear === gear));
  const gear = mostCommon(inBoth);
  if (gear === null) {
    reasons.push({ code: 'compare/other-gear', facts: { before, after } });
    return false;
  }
  for (const side of ['before', 'after'] as const) {
    pools[side] = pools[side].filter((c) => {
      if (c.pull.gear === null || c.pull.gear === gear) return true;
      leftOut.push({ code: 'compare/left-out-gear', facts: { ...factsOf(c), gear: c.pull.gear } });
      return false;
    });
  }
  return true;
}

/**
 * By engine speed over road speed: a car without gear ratios has no numbers, and a gear that a person told for all
 * pulls may not be that of each. False where the sides share no gear.
 */
function keepOneRatio(pools: Record<Side, ChosenPull[]>, leftOut: Note[], reasons: Note[]): boolean {
  const parts = partedByTurns(turnsOf(pullsOf(pools))).map((part) => {
    const pulls = new Map(part.map((t) => [t.pull, t.level]));
    const levels = (side: Side) => pools[side].flatMap((c) => pulls.get(c.pull) ?? []);
    return { pulls, before: levels('before'), after: levels('after') };
  });
  if (parts.length < 2) return true;
  const most = (of: (part: (typeof parts)[number]) => number) =>
    parts.reduce((best, part) => (of(part) > of(best) ? part : best));
  const shared = most((p) => (p.before.length && p.after.length ? p.pulls.size : 0));
  const isOneSided = pools.before.length === 0 || pools.after.length === 0;
  if (!isOneSided && (shared.before.length === 0 || shared.after.length === 0)) {
    const [before, after] = [most((p) => p.before.length).before, most((p) => p.after.length).after];
    // A side of which nothing is known may have been driven in any of them.
    if (before.length === 0 || after.length === 0) return true;
    const share = Math.expm1(mean(after) - mean(before));
    reasons.push({ code: 'compare/other-gear-by-speeds', facts: { share } });
    return false;
  }
  const kept = isOneSided ? most((p) => p.pulls.size) : shared;
  const level = mean([...kept.pulls.values()]);
  const all = new Map(parts.flatMap((p) => [...p.pulls]));
  for (const side of ['before', 'after'] as const) {
    pools[side] = pools[side].filter((c) => {
      const own = all.get(c.pull);
      if (own === undefined || kept.pulls.has(c.pull)) return true;
      const facts = { ...factsOf(c), share: Math.expm1(own - level) };
      leftOut.push({ code: 'compare/left-out-gear-by-speeds', facts });
      return false;
    });
  }
  return true;
}

function pullsOf(pools: Record<Side, ChosenPull[]>): PullEvidence[] {
  return [...pools.before, ...pools.after].map((c) => c.pull);
}

function mostCommon(values: readonly number[]): number | null {
  let best: number | null = null;
  let most = 0;
  for (const value of values) {
    const count = values.filter((v) => v === value).length;
    if (count > most) {
      most = count;
      best = value;
    }
  }
  return best;
}

function leaveOutShort(pools: Record<Side, ChosenPull[]>, leftOut: Note[]): void {
  const spans = [...pools.before, ...pools.after].map((c) => c.band[1] - c.band[0]);
  const usual = median(spans);
  for (const side of ['before', 'after'] as const) {
    pools[side] = pools[side].filter((c) => {
      if (c.band[1] - c.band[0] >= shortShare * usual) return true;
      leftOut.push({ code: 'compare/left-out-short', facts: factsOf(c) });
      return false;
    });
  }
}

function leaveOutTroubled(
  pools: Record<Side, ChosenPull[]>,
  isOneGear: boolean,
  leftOut: Note[],
  reasons: Note[],
): void {
  // Engine speed over road speed of another gear would pass for wheels that spin.
  const troubles = isOneGear
    ? troublesOf([...pools.before, ...pools.after])
    : new Map([...troublesOf(pools.before), ...troublesOf(pools.after)]);
  for (const side of ['before', 'after'] as const) {
    const all = pools[side];
    const troubled = all.filter((c) => (troubles.get(c.pull) ?? []).length > 0);
    if (troubled.length === 0) continue;
    const sound = all.length - troubled.length;
    if (sound >= 2 && sound > troubled.length) {
      pools[side] = all.filter((c) => !troubled.includes(c));
      for (const c of troubled) {
        const [first] = troubles.get(c.pull) ?? [];
        if (first) leftOut.push(leftOutNote(c, first));
      }
      continue;
    }
    for (const kind of ['limiter', 'intervention', 'wheel-spin'] as const) {
      const pulls = troubled.filter((c) => troubles.get(c.pull)?.some((t) => t.kind === kind)).length;
      if (pulls > 0) reasons.push({ code: `compare/${kind}`, facts: { side, pulls } });
    }
    const knocking = troubled.flatMap((c) => (troubles.get(c.pull) ?? []).filter((t) => t.kind === 'knock'));
    if (knocking.length > 0) {
      const retard = median(knocking.map((t) => t.retard_rad));
      const facts = side === 'before' ? { before: retard, after: 0 } : { before: 0, after: retard };
      reasons.push({ code: 'compare/knock-retard', facts });
    }
  }
}

function leftOutNote(c: ChosenPull, trouble: Trouble): Note {
  switch (trouble.kind) {
    case 'knock':
      return { code: 'compare/left-out-knock', facts: { ...factsOf(c), retard_rad: trouble.retard_rad } };
    case 'wheel-spin':
      return { code: 'compare/left-out-spin', facts: factsOf(c) };
    case 'limiter':
      return { code: 'compare/left-out-limiter', facts: factsOf(c) };
    case 'intervention':
      return { code: 'compare/left-out-intervention', facts: factsOf(c) };
  }
}
