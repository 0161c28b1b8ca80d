import { gridMean, gridOver, powerOnGrid } from '../../core/compare/band/grid.ts';
import { decide } from '../../core/compare/decide.ts';
import type { EntryPulls, PullEvidence } from '../../core/compare/index.ts';
import { type ChangeDeclaration, declareChange, judge, type Verdict } from '../../core/compare/index.ts';
import { defaultMargin } from '../../core/compare/judge.ts';
import { findEffect } from '../../core/compare/levels/find-effect.ts';
import { leaveOutOdd } from '../../core/compare/selection/leave-out-odd.ts';
import { afterSetup, beforeSetup } from '../../core/compare/selection/rows.ts';
import { interval, welch } from '../../core/compare/statistics/index.ts';
import {
  type Day,
  type InventedEntry,
  inventDay,
  quietDay,
  trueMean,
  truePower,
} from './invented-session.ts';
import { levelGrid, levelRows } from './level-days.ts';
import { normal, seeded } from './random.ts';

const degree = Math.PI / 180;

/** How the days of one row of the table are drawn. */
export type Row = {
  readonly name: string;
  readonly entries: number;
  readonly pulls: number;
  /** One entry more, in which the baseline is driven again at the end of the day. */
  readonly isDrivenAgain?: boolean;
  /** What the day is like; `gauss` and `uniform` are the row's own streams. */
  readonly day: (draw: { gauss: () => number; uniform: () => number }) => Partial<Day>;
};

export type RowResult = {
  readonly name: string;
  readonly entries: number;
  readonly pulls: number;
  readonly sessions: number;
  /** Shares, 0 to 1. */
  readonly coverage: number;
  readonly welchCoverage: number;
  readonly falseVerdicts: number;
  readonly signErrors: number;
  readonly decided: number;
  readonly refused: number;
  readonly curveCoverage: number;
  /** Mean half width of the interval as a share of power. */
  readonly half: number;
  readonly welchHalf: number;
  /** Ours over Welch's, once Welch's is stretched or shrunk to cover as often as ours does. */
  readonly widthRatio: number;
  /** The same with both stretched or shrunk to hold the truth in 95 % of the row's sessions. */
  readonly widthAt95: number;
};

/** One session judged, beside Welch's t on the same two entries. */
type Judged = {
  readonly verdict: Pick<Verdict, 'kind' | 'interval95' | 'effect'>;
  readonly welch: readonly [number, number];
  readonly truth: number;
  /** What all of these are a share of. */
  readonly base: number;
  readonly isCurveHeld: boolean;
};

/** Null where the two were refused. */
type Way = (day: Day, place: number, share: number) => Judged | null;

/** All that a session tells, witnesses and curves with it. */
const wholly: Way = (day, place, share) => {
  const made = inventDay(day);
  const [before, after] = [made[place] as EntryPulls, made[place + 1] as EntryPulls];
  const verdict = judge({
    before: before.pulls,
    after: after.pulls,
    ...(made.length > 2 ? { session: made } : {}),
    declared: declareChange('spark', { size: degree }),
  });
  const levelBefore = Math.exp(0.03 * place);
  const band = verdict.band_rad_s;
  if (verdict.kind === 'not-comparable' || !band || !verdict.interval95) return null;
  const base = trueMean(band) * levelBefore;
  const means = (pulls: readonly PullEvidence[]) =>
    pulls.map((p) => gridMean(powerOnGrid(p, gridOver(band))));
  return {
    verdict,
    welch: interval(welch(means(before.pulls), means(after.pulls))),
    truth: base * share,
    base,
    isCurveHeld: curveHolds(verdict, levelBefore * share),
  };
};

/** Band means alone, quicker: what becomes of them in the model of the day. */
export const byLevels: Way = (day, place, share) => {
  const rows = leaveOutOdd(levelRows(day, place)).rows;
  const found = findEffect(rows, levelGrid, {
    declared: declareChange('spark', { size: degree }),
    prior: null,
    lastingVariance: 0,
    isBoostSteady: true,
  })?.found;
  if (!found) return null;
  const { kind, interval95 } = decide(found.effect, defaultMargin);
  const levels = (group: string) => rows.filter((r) => r.group === group).map((r) => r.level);
  return {
    verdict: { kind, interval95: [...interval95], effect: found.effect.difference },
    welch: interval(welch(levels(beforeSetup), levels(afterSetup))),
    truth: Math.log1p(share),
    base: 1,
    isCurveHeld: false,
  };
};

/**
 * Sessions with known truth, half of them with no true change, judged with all that their session tells; beside
 * them Welch's t on the same two entries' band means.
 */
export function calibrateRow(row: Row, sessions: number, seed: number, judged: Way = wholly): RowResult {
  const uniform = seeded(seed);
  for (let i = 0; i < 9; i++) uniform();
  const gauss = normal(uniform);
  const sum = { covered: 0, welch: 0, wrong: 0, sign: 0, decided: 0, refused: 0, curves: 0 };
  let half = 0;
  let welchHalf = 0;
  const reach: number[] = [];
  const ownReach: number[] = [];
  for (let i = 0; i < sessions; i++) {
    const share = i % 2 === 0 ? 0 : -0.02 + 0.06 * uniform();
    const place = Math.floor(uniform() * (row.entries - 1));
    const day = {
      ...quietDay,
      ...row.day({ gauss, uniform }),
      seed: Math.floor(uniform() * 2 ** 31),
      entries: ladderOf(row, place, share),
    };
    const found = judged(day, place, share);
    if (!found?.verdict.interval95) {
      sum.refused++;
      continue;
    }
    const { verdict, welch: other, truth, base } = found;
    const own = found.verdict.interval95;
    const holds = ([low, high]: readonly [number, number]) => low <= truth && truth <= high;
    if (holds(own)) sum.covered++;
    if (holds(other)) sum.welch++;
    reach.push(reachOf((other[0] + other[1]) / 2, other, truth));
    ownReach.push(reachOf(verdict.effect ?? Number.NaN, own, truth));
    half += (own[1] - own[0]) / 2 / base;
    welchHalf += (other[1] - other[0]) / 2 / base;
    const sign = verdict.kind === 'gain' ? 1 : verdict.kind === 'loss' ? -1 : 0;
    if (share === 0 && sign !== 0) sum.wrong++;
    if (share !== 0 && sign === -Math.sign(share)) sum.sign++;
    if (verdict.kind !== 'undecided') sum.decided++;
    if (found.isCurveHeld) sum.curves++;
  }
  const stated = sessions - sum.refused;
  return {
    name: row.name,
    entries: row.entries,
    pulls: row.pulls,
    sessions,
    coverage: sum.covered / stated,
    welchCoverage: sum.welch / stated,
    falseVerdicts: sum.wrong / (sessions / 2),
    signErrors: sum.sign / (sessions / 2),
    decided: sum.decided / stated,
    refused: sum.refused / sessions,
    curveCoverage: sum.curves / stated,
    half: half / stated,
    welchHalf: welchHalf / stated,
    widthRatio: half / (shareOf(reach, sum.covered / stated) * welchHalf),
    widthAt95: (half * shareOf(ownReach, 0.95)) / (welchHalf * shareOf(reach, 0.95)),
  };
}

/** How far an interval would have to be stretched about its middle value to reach the truth. */
function reachOf(middle: number, [low, high]: readonly [number, number], truth: number): number {
  return truth > middle ? (truth - middle) / (high - middle) : (middle - truth) / (middle - low);
}

/** Value that the given share of all does not exceed. */
function shareOf(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

/** Every entry one more degree of spark and 3 % more power, save the judged one with its own share. */
function ladderOf(row: Row, place: number, share: number): InventedEntry[] {
  let level = 0;
  const entries = Array.from({ length: row.entries }, (_, e): InventedEntry => {
    if (e > 0) level += e === place + 1 ? Math.log1p(share) : 0.03;
    return { pulls: row.pulls, share: Math.expm1(level), moved: { spark: e * degree } };
  });
  return row.isDrivenAgain ? [...entries, { pulls: row.pulls, share: 0, repeats: 0 }] : entries;
}

function curveHolds(verdict: Verdict, share: number): boolean {
  const curve = verdict.curve;
  if (!curve) return false;
  return curve.delta.every((_, k) => {
    const truth = truePower(curve.engineSpeed_rad_s[k] as number) * share;
    return (curve.low[k] as number) <= truth && truth <= (curve.high[k] as number);
  });
}

/** Days as they come: each row's sessions are drawn anew from this. */
export const days: Readonly<Record<string, Row['day']>> = {
  'steady day': () => ({}),
  'rough road': () => ({ repeatability: 0.012, shape: 0.006, boostScatter: 1200, sensorNoise: 2 }),
  'heat soak': ({ uniform }) => ({ intakeRise: 0.2 + 0.5 * uniform(), intakeCost: 0.003 * uniform() }),
  'unseen drift': ({ gauss }) => ({ driftPerPull: 0.0005 * gauss() }),
  'strong drift': ({ uniform }) => ({
    driftPerPull: (uniform() < 0.5 ? 1 : -1) * (0.001 + 0.002 * uniform()),
  }),
  'warming up': ({ uniform }) => ({ warmUp: 0.01 * uniform() }),
  'wandering day': () => ({ wander: 0.001 }),
  'wandering boost': () => ({ boostMatters: true, boostScatter: 1000, repeatability: 0.003 }),
  'mixed days': ({ gauss, uniform }) => ({
    repeatability: 0.003 + 0.007 * uniform(),
    shape: 0.002 + 0.004 * uniform(),
    driftPerPull: uniform() < 0.5 ? 0 : 0.0006 * gauss(),
    intakeRise: uniform() < 0.5 ? 0 : 0.5 * uniform(),
    intakeCost: 0.003 * uniform(),
    boostScatter: 500 + 1000 * uniform(),
    boostMatters: uniform() < 0.5,
    sensorNoise: 0.5 + 2 * uniform(),
  }),
};

/** A second thing that moved, or an event, beside a declared step. */
export type Confounder = {
  readonly name: string;
  readonly declared: ChangeDeclaration;
  readonly moved: InventedEntry['moved'];
  readonly gear?: number;
};

const spark = declareChange('spark', { size: degree });
const boost = declareChange('boost', { from: 100_000, to: 110_000 });
const mixture = declareChange('mixture', { from: 0.84, to: 0.82 });
const mixtureTo = (to: number) => declareChange('mixture', { from: 0.84, to });

export const confounders: readonly Confounder[] = [
  { name: 'spark, and boost +6 kPa', declared: spark, moved: { spark: degree, boost: 6000 } },
  { name: 'mixture, and boost +6 kPa', declared: mixture, moved: { lambda: -0.02, boost: 6000 } },
  { name: 'boost, and spark -1.5 deg', declared: boost, moved: { boost: 10_000, spark: -1.5 * degree } },
  { name: 'spark, and lambda -0.03', declared: spark, moved: { spark: degree, lambda: -0.03 } },
  { name: 'spark, and fluid +25 %', declared: spark, moved: { spark: degree, fluid: 0.75e-6 } },
  { name: 'spark, 1.5 deg retarded', declared: spark, moved: { spark: degree, retard: 1.5 * degree } },
  { name: 'spark, never happened', declared: spark, moved: {} },
  { name: 'spark, in another gear', declared: spark, moved: { spark: degree }, gear: 4 },
];

export const cleanSteps: readonly Confounder[] = [
  { name: 'spark', declared: spark, moved: { spark: degree } },
  { name: 'boost with fluid after it', declared: boost, moved: { boost: 10_000, fluid: 0.3e-6 } },
  { name: 'mixture', declared: mixture, moved: { lambda: -0.02 } },
  { name: 'mixture, 0.04 richer', declared: mixtureTo(0.8), moved: { lambda: -0.04 } },
  { name: 'mixture, 0.02 leaner', declared: mixtureTo(0.86), moved: { lambda: 0.02 } },
];

/** Share of sessions in which such a step is refused. */
export function refusedShare(
  step: Confounder,
  row: Pick<Row, 'entries' | 'pulls' | 'day'>,
  sessions: number,
  seed: number,
): number {
  const uniform = seeded(seed);
  for (let i = 0; i < 9; i++) uniform();
  const gauss = normal(uniform);
  let refused = 0;
  for (let i = 0; i < sessions; i++) {
    const entries: InventedEntry[] = Array.from({ length: row.entries }, (_, e) => ({
      pulls: row.pulls,
      share: e === 0 ? 0 : 0.02,
      ...(e === 0 ? {} : { moved: step.moved ?? {}, ...(step.gear ? { gear: step.gear } : {}) }),
    }));
    const made = inventDay({
      ...quietDay,
      ...row.day({ gauss, uniform }),
      seed: Math.floor(uniform() * 2 ** 31),
      entries,
    });
    const verdict = judge({
      before: made[0]?.pulls ?? [],
      after: made[1]?.pulls ?? [],
      ...(row.entries > 2 ? { session: made } : {}),
      declared: step.declared,
    });
    if (verdict.kind === 'not-comparable') refused++;
  }
  return refused / sessions;
}
