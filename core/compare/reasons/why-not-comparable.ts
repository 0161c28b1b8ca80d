import type { Note } from '../../result/index.ts';
import { type Grid, onGrid } from '../band/grid.ts';
import type { PullEvidence } from '../evidence/pull-evidence.ts';
import { waysOf } from '../levels/nuisances.ts';
import type { Side } from '../notes.ts';
import type { ChosenPull } from '../selection/choose-pulls.ts';
import { mean, median, pooledVariance, tQuantile } from '../statistics/index.ts';

type Sides = Readonly<Record<Side, readonly ChosenPull[]>>;

/** Masses this far apart make another car of it (common practice: a passenger in or out). */
const massLimit = 0.015;
/** Engine speed over road speed this far apart: another tyre, or more slip (practice: slip is 1 to 3 %). */
const rollingLimit = 0.012;

/**
 * What makes two sets of pulls incomparable before anyone looks at what the engine did.
 *
 * @param isOneGear  where they were in two, engine speed over road speed says nothing of the tyres
 */
export function whyNotComparable(sides: Sides, grid: Grid, isOneGear: boolean): Note[] {
  return [
    ...otherwiseMeasured(sides),
    ...otherMass(sides),
    ...otherDirection(sides),
    ...(isOneGear ? otherRolling(sides, grid) : []),
    ...knocking(sides),
  ];
}

function first<T>(sides: Sides, side: Side, of: (pull: PullEvidence) => T): T | null {
  const pull = sides[side][0]?.pull;
  return pull ? of(pull) : null;
}

function otherwiseMeasured(sides: Sides): Note[] {
  const before = first(sides, 'before', (p) => p.power);
  const after = first(sides, 'after', (p) => p.power);
  if (!before || !after) return [];
  const notes: Note[] = [];
  if (instruments(sides, 'before') !== instruments(sides, 'after')) {
    notes.push({ code: 'compare/other-basis', facts: { before: before.basis, after: after.basis } });
  }
  const [b, a] = [before.correction.standard, after.correction.standard];
  if (b !== a) notes.push({ code: 'compare/other-correction', facts: { before: b, after: a } });
  return notes;
}

/**
 * What power was read from. Where both speeds are logged they are read together, and which of them leads is no
 * difference between instruments.
 */
function instruments(sides: Sides, side: Side): string {
  const kinds = sides[side].map(({ pull }) => {
    const { basis } = pull.power;
    const isRoad = basis === 'engine-speed' || basis === 'vehicle-speed';
    const hasBoth = pull.curves.vehicleSpeed !== undefined || pull.curves.gpsSpeed !== undefined;
    return isRoad && hasBoth ? 'both-speeds' : basis;
  });
  return [...new Set(kinds)].sort().join();
}

function otherMass(sides: Sides): Note[] {
  const masses = (side: Side) => sides[side].flatMap((c) => c.pull.mass_kg ?? []);
  const before_kg = mean(masses('before'));
  const after_kg = mean(masses('after'));
  return Math.abs(after_kg / before_kg - 1) > massLimit
    ? [{ code: 'compare/other-mass', facts: { before_kg, after_kg } }]
    : [];
}

/** All out on one side and all back on the other: slope and wind can't be told from the change. */
function otherDirection(sides: Sides): Note[] {
  const all = waysOf([...sides.before, ...sides.after].map((c) => c.pull));
  const before = new Set(all.subarray(0, sides.before.length).filter((way) => way !== 0));
  const after = new Set(all.subarray(sides.before.length).filter((way) => way !== 0));
  if (before.size === 0 || after.size === 0) return [];
  return [...before].some((way) => after.has(way)) ? [] : [{ code: 'compare/other-direction', facts: {} }];
}

function otherRolling(sides: Sides, grid: Grid): Note[] {
  const ratios = (side: Side) =>
    sides[side].flatMap(({ pull }) => {
      const speed = pull.curves.vehicleSpeed;
      if (!speed) return [];
      const at = onGrid(pull.power.engineSpeed_rad_s, speed, grid);
      const values = [...at].map((v, k) => (grid.engineSpeed_rad_s[k] as number) / v).filter(Number.isFinite);
      return values.length > 0 ? [Math.log(median(values))] : [];
    });
  const before = ratios('before');
  const after = ratios('after');
  if (before.length === 0 || after.length === 0) return [];
  const share = Math.expm1(mean(after) - mean(before));
  const scatter = pooledVariance([before, after]);
  const error = Math.sqrt((scatter.variance || 0) * (1 / before.length + 1 / after.length));
  const limit = scatter.degrees > 0 ? tQuantile(0.99, scatter.degrees) * error : 0;
  return Math.abs(share) > Math.max(rollingLimit, limit)
    ? [{ code: 'compare/other-rolling', facts: { share } }]
    : [];
}

/**
 * Knock control at work on one side and not on the other: an event a pull more, beyond what counts scatter by
 * themselves (square root of the count).
 */
function knocking(sides: Sides): Note[] {
  const facts = knockEventsOf(sides);
  if (!facts) return [];
  const scatter = Math.sqrt((facts.before + facts.after) / Math.min(sides.before.length, sides.after.length));
  const more = Math.abs(facts.after - facts.before);
  return more >= 1 && more > 1.5 * scatter ? [{ code: 'compare/knock-events', facts }] : [];
}

/** Knock that is no reason by itself is said all the same: someone should look at it. */
export function knockRemarks(sides: Sides): Note[] {
  const heard = knockEventsOf(sides);
  if (!heard || heard.before + heard.after === 0 || knocking(sides).length > 0) return [];
  return [{ code: 'compare/knock-heard', facts: heard }];
}

/** Mean knock events a pull on either side; null where nobody counted. */
function knockEventsOf(sides: Sides): { readonly before: number; readonly after: number } | null {
  const events = (side: Side) => sides[side].flatMap((c) => c.pull.events.knockEvents ?? []);
  const [b, a] = [events('before'), events('after')];
  return b.length > 0 && a.length > 0 ? { before: mean(b), after: mean(a) } : null;
}
