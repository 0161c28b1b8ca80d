import { explainLineLoss, laminarUpTo, type OperatingPoint, reynoldsNumber } from '../delivery/index.ts';
import { clearanceVolume, type FitReview, reviewFit } from '../fit/index.ts';
import { fail, type Note, ok, type Problem, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import { explainArrival } from './arrival.ts';
import { type Endurance, enduranceOf } from './endurance.ts';
import { type FuelModel, fuelModel } from './engine-fuel.ts';
import { explainBucket, explainDifference, explainNozzle } from './explain-delivery.ts';
import { type Fallback, fallbackOf } from './fallback.ts';
import { type FeedMap, feedMap, type SprayContext } from './feed-curve.ts';
import { type FluidSystemModel, fittedNozzles, fluidSystemModel, type NozzleGroup } from './fluid-system.ts';
import { explainGuardBand, explainGuardPressure, type GuardRow, guardBand } from './guard-band.ts';
import { type Need, needOf, ratioProfile } from './need.ts';
import { type NozzleChoice, nozzleFit, rankNozzles } from './nozzle-choice.ts';
import { powerLossGuide } from './power-loss-guide.ts';
import { practice } from './practice.ts';
import { inField, pumpPressureField } from './problem-field.ts';
import { type PullPath, pullPath } from './pull-path.ts';
import { type Recommendation, recommendStrategy } from './recommendation.ts';
import type { Setup } from './setup.ts';
import { type Strategy, strategiesOf } from './strategy.ts';
import { explainFeedMap } from './strategy-numbers.ts';

/** Everything that a setup leads to, SI. */
export type Plan = {
  readonly path: PullPath;
  readonly fuel: FuelModel;
  readonly need: Need;
  readonly system: FluidSystemModel;
  /** What the curves are drawn for: the fitted nozzles where they are named, else the best of the list. */
  readonly nozzle: NozzleChoice & { readonly isFitted: boolean };
  /** All combinations, best first. */
  readonly choices: readonly NozzleChoice[];
  /** Full setting at peak boost. */
  readonly peak: OperatingPoint;
  readonly strategies: readonly Strategy[];
  readonly recommended: Recommendation;
  /** The strategy that endurance, guard band and map are worked out for: the user's, else the recommended one. */
  readonly driven: Strategy;
  readonly map: FeedMap;
  /** What the flow at any state of the engine is worked out from. */
  readonly context: SprayContext;
  readonly endurance: Endurance;
  readonly guardBand: readonly GuardRow[];
  readonly fallback: Fallback;
  readonly powerLossGuide: readonly Note[];
  readonly fit: FitReview;
  readonly notes: readonly Note[];
  readonly explanations: readonly Explanation[];
};

/** The review of the fit alone: it needs no number of the engine. */
export function fitOf(setup: Setup): FitReview {
  const { place, nozzles, fitted } = setup.fluidSystem;
  const mix = setup.fluidSystem.mix ?? practice.mix;
  const fittedPlaces = nozzles.filter((n) => fitted.includes(n.name)).map((n) => n.place ?? place);
  const places = [...new Set(fittedPlaces.length > 0 ? fittedPlaces : [place])].filter((p) => p !== null);
  return reviewFit(
    {
      compressor: setup.engine.compressor,
      places,
      hasCooler: setup.engine.hasCooler,
      hasAlcohol: mix.methanol_percent + mix.ethanol_percent > 0,
      hasMethanol: mix.methanol_percent > 0,
    },
    setup.fit,
  );
}

/** How little liquid stops this engine; nothing while its size is not known. */
function lockNotes(setup: Setup, flow: number): Note[] {
  const { displacement_L, cylinders, compressionRatio } = setup.engine;
  if (displacement_L === null || cylinders === null || compressionRatio === null) return [];
  const volume = clearanceVolume((displacement_L * 1e-3) / cylinders, compressionRatio);
  return [{ code: 'fit/lock-volume', facts: { volume, seconds: volume / flow } }];
}

/** Faults of the points set by hand. */
function handProblems(setup: Setup): Problem[] {
  const { start_kPa, full_kPa } = setup.targets;
  if (start_kPa !== null && full_kPa !== null && start_kPa >= full_kPa)
    return [
      {
        code: 'injection/start-above-full',
        facts: { start: start_kPa * 1e3, full: full_kPa * 1e3 },
        where: { field: 'targets.start_kPa' },
      },
    ];
  return [];
}

/** Where a spray that follows boost alone brings most too much; nothing where that is less than half as much again. */
function boostAloneNotes(setup: Setup, driven: Strategy): Note[] {
  if (setup.fluidSystem.input !== 'boost') return [];
  const { feed, delivered, engineSpeed_rad_s } = driven.overPull;
  const peak = Math.max(...delivered);
  let at = -1;
  for (const [i, value] of feed.entries()) {
    // A ratio of two trickles says nothing: only where a quarter of the peak flow runs.
    if ((delivered[i] ?? 0) < 0.25 * peak) continue;
    if ((value ?? 0) > (feed[at] ?? 0)) at = i;
  }
  const most = feed[at] ?? 0;
  if (most < 1.5) return [];
  return [
    {
      code: 'injection/boost-alone-over-feeds',
      facts: { most, engineSpeed_rad_s: engineSpeed_rad_s[at] ?? 0 },
    },
  ];
}

/** What the delivery at peak is worth remarking. */
function deliveryNotes(
  system: FluidSystemModel,
  nozzles: NozzleGroup,
  boost: number,
  peak: OperatingPoint,
): Note[] {
  const notes: Note[] = [];
  const { line, liquid, pump } = system.around(nozzles, boost);
  if (line) {
    const reynolds = reynoldsNumber(line, liquid, peak.flow);
    if (reynolds > laminarUpTo) notes.push({ code: 'delivery/line-turbulent', facts: { reynolds } });
    // A tenth of the pressure costs a twentieth of the flow: worth a wider hose (common practice).
    if (peak.lineLoss > 0.1 * peak.pressureDifference)
      notes.push({
        code: 'delivery/line-takes-much',
        facts: { loss: peak.lineLoss, pressureDifference: peak.pressureDifference },
      });
  }
  if (pump.setPressure !== null) {
    const base = pump.reference === 'manifold' ? system.ambientPressure + boost : system.ambientPressure;
    const pressure = peak.pumpPressure - base;
    if (pressure < 0.98 * pump.setPressure)
      notes.push({ code: 'delivery/pump-droops', facts: { pressure, setPressure: pump.setPressure } });
  }
  return notes;
}

/**
 * The plan of a setup: need, nozzle, injection curves, endurance, guard band, fallback, fit review.
 *
 * Errors: every fault at once: no peak boost, fuel flow unknown, shares over the whole, nozzle or pump numbers
 *         that can't be, an empty nozzle list, a start above the full point, a pump weaker than boost.
 */
export function planOf(setup: Setup): Result<Plan> {
  const problems: Problem[] = handProblems(setup);
  const system = fluidSystemModel(setup);
  if (!system.ok) problems.push(...system.problems);
  const peakBoost = (setup.engine.peakBoost_kPa ?? 0) * 1e3;
  if (!(peakBoost > 0))
    problems.push({ code: 'injection/no-peak-boost', facts: {}, where: { field: 'engine.peakBoost_kPa' } });
  const ambientPressure = (setup.air.barometer_kPa ?? 101.325) * 1e3;
  const path = pullPath(setup, Math.max(peakBoost, 1));
  const fuel = fuelModel(setup, path, ambientPressure);
  if (!fuel.ok) problems.push(...fuel.problems);
  const profile = ratioProfile(setup, peakBoost);
  if (!profile.ok) problems.push(...profile.problems);
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);
  if (!system.ok || !fuel.ok || !profile.ok) throw new Error('a failed part carries a problem');

  const need = needOf(setup, path, fuel.value, profile.value, system.value.density);
  const choices = inField(rankNozzles(system.value, peakBoost, need.fluid), pumpPressureField(setup));
  if (!choices.ok) return choices;
  const fitted = fittedNozzles(setup, system.value.nozzles);
  if (!fitted.ok) return fitted;
  const nozzle = inField(
    nozzleOf(setup, system.value, choices.value, fitted.value, peakBoost, need.fluid),
    pumpPressureField(setup),
  );
  if (!nozzle.ok) return nozzle;
  const peak = inField(system.value.point(nozzle.value.group, peakBoost, 1), pumpPressureField(setup));
  if (!peak.ok) return peak;

  const context: SprayContext = {
    setup,
    system: system.value,
    fuel: fuel.value,
    need,
    path,
    nozzles: nozzle.value.group,
  };
  const strategies = strategiesOf(context, nozzle.value.feed);
  const recommended = recommendStrategy(context, strategies);
  const wanted = setup.targets.strategy ?? recommended.name;
  const driven =
    strategies.find((s) => s.name === wanted) ?? strategies.find((s) => s.name === recommended.name);
  const later = strategies.find((s) => s.name === 'later-start');
  if (!driven || !later) throw new Error('the recommended strategy is one of the strategies');

  const endurance = enduranceOf(setup, path, driven);
  const fallback = fallbackOf(setup);
  const bucketScatter = system.value.bucket?.scatter ?? null;
  const notes: Note[] = [
    ...fuel.value.notes,
    ...path.notes,
    ...need.notes,
    ...system.value.notes,
    ...(system.value.bucket?.notes ?? []),
    ...boostAloneNotes(setup, driven),
    ...lockNotes(setup, peak.value.flow),
    ...deliveryNotes(system.value, nozzle.value.group, peakBoost, peak.value),
    { code: 'injection/spray-alone', facts: {} },
  ];
  if (setup.air.barometer_kPa === null)
    notes.push({ code: 'injection/practice-default', facts: { what: 'air', value: ambientPressure } });
  if (setup.fluidSystem.place === null)
    notes.push({ code: 'injection/practice-default', facts: { what: 'place', value: 0 } });
  const { line } = system.value.around(nozzle.value.group, peakBoost);
  const liquid = { density: system.value.density, viscosity: system.value.viscosity };
  return ok({
    path,
    fuel: fuel.value,
    need,
    system: system.value,
    nozzle: nozzle.value,
    choices: choices.value,
    peak: peak.value,
    strategies,
    recommended,
    driven,
    context,
    map: feedMap(context, { start: driven.start, full: driven.full }),
    endurance,
    guardBand: guardBand(context, driven),
    fallback,
    powerLossGuide: powerLossGuide({
      setup,
      path,
      driven,
      later,
      fitted: nozzle.value,
      choices: choices.value,
    }),
    fit: fitOf(setup),
    notes,
    explanations: [
      fuel.value.explanation,
      need.explanation,
      explainNozzle(system.value, peak.value),
      explainDifference(setup, system.value, peakBoost, peak.value),
      ...(system.value.bucket ? [explainBucket(system.value.bucket)] : []),
      ...(need.ruleExplanation === null ? [] : [need.ruleExplanation]),
      ...(driven.arrival === null ? [] : [explainArrival(context, driven, driven.arrival.delay)]),
      ...(line ? [explainLineLoss(line, liquid, peak.value.flow)] : []),
      ...strategies.map((s) => s.explanation),
      endurance.explanation,
      explainGuardBand(setup, bucketScatter),
      explainGuardPressure(setup),
      fallback.explanation,
      explainFeedMap(context, driven),
    ],
  });
}

/** The nozzles that the curves are drawn for. */
function nozzleOf(
  setup: Setup,
  system: FluidSystemModel,
  choices: readonly NozzleChoice[],
  fitted: NozzleGroup | null,
  peakBoost: number,
  need: number,
): Result<NozzleChoice & { isFitted: boolean }> {
  if (fitted === null) {
    const best = choices[0];
    return best ? ok({ ...best, isFitted: false }) : fail({ code: 'delivery/no-nozzle', facts: {} });
  }
  const names = [...setup.fluidSystem.fitted].sort();
  const known = choices.find((c) => [...c.names].sort().join('\n') === names.join('\n'));
  if (known) return ok({ ...known, isFitted: true });
  // Fitted more often than listed, or more than three: worked out all the same.
  const point = system.point(fitted, peakBoost, 1);
  if (!point.ok) return point;
  const feed = point.value.flow / need;
  return ok({
    names: setup.fluidSystem.fitted,
    group: fitted,
    flow: point.value.flow,
    feed,
    fit: nozzleFit(feed),
    notes: [],
    isFitted: true,
  });
}
