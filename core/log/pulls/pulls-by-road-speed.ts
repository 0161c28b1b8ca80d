import type { Note } from '../../result/index.ts';
import type { Channel, Log } from '../channel.ts';
import { withoutSpikes } from '../speeds/speed-ratio.ts';
import type { FoundPulls, PullOptions } from './find-pulls.ts';
import { gearOf } from './gear-of.ts';
import { gearsByForce } from './gears-by-force.ts';
import type { Pull } from './pull.ts';
import { type Draft, draftOf, isComplete } from './pull-draft.ts';
import { pullFlags } from './pull-flags.ts';
import { pullTimes } from './pull-times.ts';
import { splitByDips } from './speed-dips.ts';
import { renewalOf, withoutSteps } from './speed-steps.ts';
import { fullThrottleOf } from './where-floored.ts';

/** Engine speed over road speed in a middling third gear [rad/m]: 100 km/h at 4,000 rpm (common practice). */
const middlingRatio = 15;
/** A pull of unknown gear that gains less than this share of its first speed covered no usable span. */
const usableGain = 1.3;
/** The engine runs ahead of the road by about so much at full load (common practice). */
const usualSlip = 0.02;

/**
 * Pulls of a log without engine speed, from the road's: full throttle as in findPulls, parted where the acceleration
 * breaks. Engine speed is computed where gear ratio, final drive and rolling radius are known and the gear is logged
 * or told (gears-by-force); elsewhere it stays open, NaN, and the gear null.
 */
export function pullsByRoadSpeed(log: Log, road: Channel, options: PullOptions): FoundPulls {
  const renewal = renewalOf(road.values, log.time);
  const speed = withoutSteps(road.values, log.time, log.segments, renewal);
  const asEngine = withoutSpikes(speed.map((v) => middlingRatio * v));
  const found = fullThrottleOf(log, asEngine, () => new Float64Array(speed.length).fill(middlingRatio));
  // Without a gear a gentle acceleration in a low one is as strong as full throttle in the next.
  if (found.by === 'engineSpeed')
    return { pulls: [], warnings: [{ code: 'log/speed-alone', facts: { column: road.column } }] };
  const spans = found.spans.flatMap((span) =>
    splitByDips(speed, log.time, span, renewal).map((part) => ({
      ...part,
      startAt_s: part.from === span.from ? span.startAt_s : undefined,
      endAt_s: part.to === span.to ? span.endAt_s : undefined,
      startWithin_s: part.from === span.from ? (span.startWithin_s ?? 0) : 0,
      endWithin_s: part.to === span.to ? (span.endWithin_s ?? 0) : 0,
    })),
  );
  const parts = spans.flatMap((part): Draft[] => {
    const draft = draftOf(log, asEngine, null, part, false);
    return draft ? [{ ...draft, ...part, ...inRoadSpeed(draft) }] : [];
  });
  const gears = gearsOf(log, parts, speed, options);
  const { drafts, gears: kept } = joined(parts, gears.of);
  const ratios = kept.map((gear) => (gear === null ? Number.NaN : (gears.ratioOf(gear) ?? Number.NaN)));
  const scaled = drafts.map((draft, i) => inEngineSpeed(draft, ratios[i] as number));
  const known = scaled.filter((d) => !Number.isNaN(d.ratio));
  const top = known.reduce((most, d) => Math.max(most, d.last), 0);
  const engines = new Map<number, Float64Array>();
  const engineAt = (ratio: number): Float64Array | null => {
    if (Number.isNaN(ratio)) return null;
    const made = engines.get(ratio) ?? speed.map((v) => v * ratio);
    engines.set(ratio, made);
    return made;
  };
  const pulls = scaled.map((draft, i): Pull => {
    const isKnown = !Number.isNaN(draft.ratio);
    const complete = isKnown ? isComplete(draft, known, top) : gainOf(drafts[i] as Draft) >= usableGain;
    const flags = pullFlags(log, draft, { isAborted: !complete, ratio: null, engine: engineAt(draft.ratio) });
    const gear = kept[i] ?? null;
    return {
      from: draft.from,
      to: draft.to,
      ...pullTimes(log, draft),
      gear,
      rpmFrom: (draft.first * 30) / Math.PI,
      rpmTo: (draft.last * 30) / Math.PI,
      complete,
      flags:
        gear === null && gears.missing === null
          ? [...flags, { code: 'log/pull-gear-unsettled', facts: {} }]
          : flags,
    };
  });
  return { pulls, warnings: warningsOf(pulls, found.by, road, gears) };
}

function warningsOf(
  pulls: readonly Pull[],
  by: ReturnType<typeof fullThrottleOf>['by'],
  road: Channel,
  gears: Gears,
): Note[] {
  if (pulls.length === 0) return [{ code: 'log/no-pulls', facts: {} }];
  const warnings: Note[] = [];
  if (by !== 'pedal' && by !== 'throttle') warnings.push({ code: 'log/pulls-by', facts: { quantity: by } });
  warnings.push(
    gears.missing === null
      ? { code: 'log/engine-speed-computed', facts: { column: road.column, gearFrom: gears.from } }
      : { code: 'log/engine-speed-open', facts: { column: road.column, missing: gears.missing } },
  );
  return warnings;
}

type Gears = {
  readonly of: readonly (number | null)[];
  /** Engine speed over road speed in a gear [rad/m]. */
  readonly ratioOf: (gear: number) => number | null;
  readonly from: 'log' | 'told';
  /** What would have to be known for engine speed to be computed; null where it is. */
  readonly missing: 'gearRatios' | 'finalDrive' | 'radius' | 'gear' | null;
};

function gearsOf(log: Log, drafts: readonly Draft[], speed: Float64Array, options: PullOptions): Gears {
  const { gearRatios = [], finalDrive, rollingRadius_m: radius, pullGear } = options;
  const logged = drafts.map((draft) => gearOf(log, draft, {}, () => Number.NaN));
  const isLogged = logged.some((gear) => gear !== null);
  const open = (missing: NonNullable<Gears['missing']>): Gears => ({
    of: logged,
    ratioOf: () => null,
    from: 'log',
    missing,
  });
  if (gearRatios.length === 0) return open('gearRatios');
  if (!finalDrive) return open('finalDrive');
  if (!radius) return open('radius');
  const single = gearRatios.length === 1;
  const ratioOf = (gear: number) => {
    const ratio = single ? gearRatios[0] : gearRatios[gear - 1];
    return ratio === undefined ? null : (ratio * finalDrive) / radius;
  };
  if (isLogged && !single) return { of: logged, ratioOf, from: 'log', missing: null };
  const told = pullGear ?? (single ? 1 : null);
  if (told === null) return open('gear');
  const of = gearsByForce(drafts, speed, log.time, log.segments, {
    gearRatios,
    finalDrive,
    rollingRadius_m: radius,
    pullGear: told,
  });
  return { of, ratioOf, from: 'told', missing: null };
}

/** Parts of one gear on both sides of a dip are one pull: torque was cut, no gear changed. */
function joined(
  parts: readonly Draft[],
  gears: readonly (number | null)[],
): { drafts: Draft[]; gears: (number | null)[] } {
  const drafts: Draft[] = [];
  const kept: (number | null)[] = [];
  parts.forEach((part, i) => {
    const gear = gears[i] ?? null;
    const last = drafts.at(-1);
    const isCut = last?.beforeChange && part.afterChange && gear !== null && kept.at(-1) === gear;
    if (!last || !isCut) {
      drafts.push(part);
      kept.push(gear);
      return;
    }
    const { to, last: end, beforeChange, endAt_s, endWithin_s = 0 } = part;
    drafts[drafts.length - 1] = { ...last, to, last: end, beforeChange, endAt_s, endWithin_s };
  });
  return { drafts, gears: kept };
}

const inRoadSpeed = ({ first, last }: Draft) => ({
  first: first / middlingRatio,
  last: last / middlingRatio,
});

function inEngineSpeed(draft: Draft, ratio: number): Draft {
  const turns = ratio * (1 + usualSlip);
  return { ...draft, first: turns * draft.first, last: turns * draft.last, ratio };
}

function gainOf({ first, last }: Draft): number {
  return last / first;
}
