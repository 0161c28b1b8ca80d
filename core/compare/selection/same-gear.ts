import type { PullEvidence } from '../evidence/pull-evidence.ts';

/** Speeds of the road that a pull may hold, the wheels' own first: slip between them and the engine is none. */
const roadSpeeds = ['vehicleSpeed', 'gpsSpeed'] as const;
type RoadSpeed = (typeof roadSpeeds)[number];

/**
 * Engine speed over road speed this far apart is another gear, as a natural logarithm: slip and tyres leave 0.01 to
 * 0.03, the closest gears of a box stand 0.08 apart (both common practice).
 */
const gearsApart = 0.06;

/** What tells the gear of a pull where nobody knows its number. */
export type Turns = {
  readonly pull: PullEvidence;
  /** Natural logarithm of engine speed over road speed [rad/m]; NaN where no road speed is logged. */
  readonly level: number;
};

/**
 * Engine speed over road speed of each pull, all read from one kind of road speed: a speedometer reads several percent
 * higher than a satellite. It is the kind that most of the pulls hold; the others tell nothing.
 */
export function turnsOf(pulls: readonly PullEvidence[]): Turns[] {
  const held = (kind: RoadSpeed) => pulls.filter((p) => p.curves[kind]).length;
  const [wheels, satellite] = roadSpeeds;
  const kind = held(satellite) > held(wheels) ? satellite : wheels;
  return pulls.map((pull) => ({ pull, level: levelOf(pull, kind) }));
}

/** The lower quarter: wheels that spin lift the ratio for a while, and nothing lowers it. */
function levelOf({ power, curves }: PullEvidence, kind: RoadSpeed): number {
  const speed = curves[kind];
  if (!speed) return Number.NaN;
  const levels = speed
    .map((v, i) => Math.log((power.engineSpeed_rad_s[i] as number) / v))
    .filter(Number.isFinite)
    .sort();
  return levels[levels.length >> 2] ?? Number.NaN;
}

/** Pulls parted where a gap shows between their ratios; one part where all are in one gear. Without a ratio: in none. */
export function partedByTurns(turns: readonly Turns[]): Turns[][] {
  const known = turns.filter((t) => Number.isFinite(t.level)).sort((a, b) => a.level - b.level);
  const parts: Turns[][] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const one of known) {
    if (one.level - last > gearsApart) parts.push([]);
    parts.at(-1)?.push(one);
    last = one.level;
  }
  return parts;
}

/**
 * The pulls among these that were in the gear of most, of two as usual in that of the first; those of which nothing is
 * known are among them.
 */
export function inUsualGear(pulls: readonly PullEvidence[]): Set<PullEvidence> {
  const parts = partedByTurns(turnsOf(pulls));
  const firstOf = (part: readonly Turns[]) => Math.min(...part.map((t) => pulls.indexOf(t.pull)));
  const [usual] = [...parts].sort((a, b) => b.length - a.length || firstOf(a) - firstOf(b));
  const others = new Set(parts.filter((part) => part !== usual).flatMap((part) => part.map((t) => t.pull)));
  return new Set(pulls.filter((p) => !others.has(p)));
}

/** Whether nothing tells if some of these pulls were in one gear: neither its number nor both speeds. */
export function isGearOpen(pulls: readonly PullEvidence[]): boolean {
  return (
    pulls.some((p) => p.gear === null) &&
    turnsOf(pulls).some((t) => Number.isNaN(t.level)) &&
    pulls.length > 1
  );
}
