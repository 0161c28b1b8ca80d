import type { FuelBasis, PracticeDefault, StrategyName } from '../../injection/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import type { Show } from '../show.ts';

const bases: Record<FuelBasis, string> = {
  power: 'power and brake-specific consumption',
  air: 'displacement, volumetric efficiency and manifold air',
  injectors: 'logged injector duty',
};
const strategies: Record<StrategyName, string> = {
  'later-start': 'later start',
  'full-beyond': 'full point beyond peak',
  'by-hand': 'by hand',
};
const defaults: Record<PracticeDefault, (value: number, show: Show) => string> = {
  fuelConsumption: (v, show) => `Brake-specific consumption taken as ${show.quantity(v, 'massPerEnergy', 3)}`,
  volumetricEfficiency: (v, show) => `Volumetric efficiency taken as ${show.quantity(v, 'share', 0)}`,
  manifoldTemperature: (v, show) => `Air in the manifold taken as ${show.quantity(v, 'temperature', 0)}`,
  lambda: (v, show) => `Mixture taken as ${show.quantity(v, 'lambda', 2)}`,
  boostCurve: (v, show) =>
    `Boost taken to build evenly up to ${show.quantity(v, 'engineSpeed', 0)}, then to stay`,
  pullDuration: (v, show) => `A pull taken to last ${show.quantity(v, 'time', 0)}`,
  pullSpeeds: (v, show) => `A pull taken to end at ${show.quantity(v, 'engineSpeed', 0)}`,
  peakSpeed: (v, show) =>
    `Peak power taken to lie at the end of the pull, ${show.quantity(v, 'engineSpeed', 0)}: the largest need`,
  air: (v, show) => `Barometer taken as ${show.quantity(v, 'pressure')}`,
  mix: (v, show) =>
    `The mix is not given: ${show.quantity(v, 'share', 0)} methanol by volume as poured is taken`,
  place: () => 'Place of the nozzle not given: taken as the manifold’s pressure',
};

export const injectionProblems: ProblemWordsOf<'injection'> = {
  'injection/no-peak-boost': () => ({
    message: 'The peak boost is missing, or not above zero.',
    remedy: 'Enter the boost that the engine is to reach, as gauge pressure.',
  }),
  'injection/fuel-flow-unknown': (f) => ({
    message:
      f.asked === null
        ? 'The fuel flow can’t be worked out yet.'
        : `The fuel flow can’t be worked out from ${bases[f.asked]}: that is not known yet.`,
    remedy: 'Enter the target power, or the displacement, or injectors with their logged duty.',
  }),
  'injection/start-above-full': (f, show) => ({
    message: `The start at ${show.quantity(f.start, 'boost')} is not below the full point at ${show.quantity(f.full, 'boost')}.`,
    remedy: 'Set the start lower, or the full point higher.',
  }),
  'injection/ratio-profile-falls-back': (f, show) => ({
    message: `In the ratio profile ${show.quantity(f.boost, 'boost')} follows ${show.quantity(f.previous, 'boost')}: boost must rise from point to point.`,
    remedy: 'Put the points in order of boost, each boost once.',
  }),
  'injection/no-such-nozzle': (f) => ({
    message: `“${f.name}” is fitted, but not in the list of nozzles.`,
    remedy: 'Add it to the list with its rated flow, or correct its name.',
  }),
};

export const injectionNotes: NoteWordsOf<'injection'> = {
  'injection/fuel-from': (f, show) =>
    `Fuel flow from ${bases[f.basis]}: ${show.quantity(f.fuel, 'massFlow')} at peak.`,
  'injection/practice-default': (f, show) => `${defaults[f.what](f.value, show)} (default).`,
  'injection/rule-of-thumb': (f, show) =>
    `The rule of thumb (common practice, no source) says ${show.quantity(f.rule, 'volumeFlow')}; this need is ${show.quantity(f.need, 'volumeFlow')}, ${show.difference(f.difference, 'share', 0)}. It assumes petrol near ${show.quantity(0.335 / 3.6e6, 'massPerEnergy', 3)} and 15 % of a mix near ${show.quantity(930, 'density')}.`,
  'injection/ratio-outside-window': (f, show) =>
    `${show.quantity(f.ratio, 'share', 0)} fluid by mass of fuel lies outside the usual ${show.quantity(f.low, 'share', 0)} to ${show.quantity(f.high, 'share', 0)} (common practice).`,
  'injection/ratio-hardly-seen': (f, show) =>
    `${show.quantity(f.ratio, 'share', 1)} fluid by mass of fuel is hardly seen by the engine (common practice).`,
  'injection/ratio-quenches': (f, show) =>
    `${show.quantity(f.ratio, 'share', 0)} fluid by mass of fuel quenches the burn (common practice).`,
  'injection/nozzle-too-small': (f, show) =>
    `Too small: ${show.quantity(f.delivered, 'volumeFlow')} of the ${show.quantity(f.need, 'volumeFlow')} needed, ${show.number(f.feed, 2)} times.`,
  'injection/nozzle-matched': (f, show) =>
    `Well matched: ${show.quantity(f.delivered, 'volumeFlow')} for a need of ${show.quantity(f.need, 'volumeFlow')}, ${show.number(f.feed, 2)} times.`,
  'injection/nozzle-oversize': (f, show) =>
    `Oversize: ${show.quantity(f.delivered, 'volumeFlow')} for a need of ${show.quantity(f.need, 'volumeFlow')}, ${show.number(f.feed, 2)} times.`,
  'injection/nozzle-much-too-large': (f, show) =>
    `Much too large: ${show.quantity(f.delivered, 'volumeFlow')} for a need of ${show.quantity(f.need, 'volumeFlow')}, ${show.number(f.feed, 2)} times.`,
  'injection/nozzle-several': (f, show) =>
    `${show.number(f.count)} nozzles: finer shares of flow, and as many more to clog and to seal.`,
  'injection/larger-of-two': (f, show) =>
    `Between two sizes the larger with a later start (common practice): ${f.smaller} would bring only ${show.number(f.smallerFeed, 2)} of the need, this one ${show.number(f.feed, 2)}.`,
  'injection/none-large-enough': (f, show) =>
    `No nozzle or combination on the list is large enough; the best brings ${show.number(f.feed, 2)} of the need. Boost and spark must stay below the target until one is.`,
  'injection/same-mean-fluid': (f, show) =>
    `Same mean fluid over the ramp as a matched nozzle: start at ${show.quantity(f.start, 'boost')}, ${show.quantity(f.share, 'share', 0)} of peak boost, at ${show.number(f.feed, 2)} times the need.`,
  'injection/peak-need-met': (f, show) =>
    `Start at ${show.quantity(f.start, 'boost')} and full point at ${show.quantity(f.full, 'boost')}, so that peak boost gets its need and no more.`,
  'injection/mid-range-cost': (f, show) =>
    `From ${show.quantity(f.from, 'boost')} to ${show.quantity(f.to, 'boost')} it is under-fed by ${show.quantity(f.shortfall, 'share', 0)}: the mid-range pays for the later start.`,
  'injection/over-fed': (f, show) =>
    `From ${show.quantity(f.from, 'boost')} to ${show.quantity(f.to, 'boost')} it is over-fed, up to ${show.number(f.most, 2)} times the need: that costs power.`,
  'injection/still-over-feeds': (f, show) =>
    `Even so peak boost gets ${show.number(f.feed, 2)} times its need. A smaller nozzle is the sound way.`,
  'injection/under-fed-at-peak': (f, show) =>
    `At peak boost only ${show.number(f.feed, 2)} of the need arrives. Knock can follow: plan with less boost.`,
  'injection/start-at-once': (f, show) =>
    `When the spray begins it is ${show.quantity(f.fluidToFuel, 'share', 1)} of the fuel by mass.`,
  'injection/rounded-to-step': (f, show) =>
    `As the controller takes it, in steps of ${show.span(f.step, 'boost')}: start ${show.quantity(f.start, 'boost')}, full ${show.quantity(f.full, 'boost')}.`,
  'injection/controller-cannot': (f, show) =>
    `${f.what === 'start' ? 'A start' : 'A full point'} at ${show.quantity(f.asked, 'boost')} is past what the controller takes, ${show.quantity(f.most, 'boost')}.`,
  'injection/start-moved-for-knock': (f, show) =>
    `Start moved from ${show.quantity(f.was, 'boost')} down to ${show.quantity(f.start, 'boost')}: this engine knocks without fluid at ${show.quantity(f.limit, 'boost')}, and fluid takes ${show.quantity(f.delay, 'time', 1)} to arrive.`,
  'injection/fluid-too-late': (f, show) =>
    `Fluid arrives at ${show.quantity(f.arrives, 'boost')}, after the ${show.quantity(f.limit, 'boost')} at which this engine knocks without it. Fit the check valve at the nozzle, shorten the line, or hold boost back.`,
  'injection/fluid-never-arrives': (f, show) =>
    `The line (${show.quantity(f.volume, 'smallVolume')}) does not fill within a pull: no fluid arrives at all. Keep it full with a check valve at the nozzle.`,
  'injection/coarse-drops': (f, show) =>
    `Only ${show.span(f.pressureDifference, 'fluidPressure')} of ${show.span(f.full, 'fluidPressure')} are left at the nozzle: coarse drops wet the wall.`,
  'injection/recommended-because': (f, show) =>
    `Recommended: ${strategies[f.strategy]}. It misses the need by ${show.quantity(f.misfeed, 'share', 0)} on average, the other by ${show.quantity(f.otherMisfeed, 'share', 0)}.`,
  'injection/recommended-tie': (f, show) =>
    f.isSame
      ? `Recommended: ${strategies[f.strategy]}. With this nozzle both ways come to the same points.`
      : `Recommended: ${strategies[f.strategy]}. Both ways miss the need by about ${show.quantity(f.misfeed, 'share', 0)} on average; this one is full at peak boost, so a bottle shows what peak really gets.`,
  'injection/recommended-only': (f) =>
    `Recommended: ${strategies[f.strategy]}. On or off leaves no other choice.`,
  'injection/recommended-for-drops': (f) =>
    `Recommended: ${strategies[f.strategy]}. Stretching the ramp would slow the pump until less than half the pressure is left, and the drops turn coarse (common practice).`,
  'injection/full-meets-need': (f, show) =>
    `Flow doesn’t follow pump speed in a line, so this brings ${show.number(f.peakFeed, 2)} times the need at peak; a full point at ${show.quantity(f.full, 'boost')} would meet it. Try it into a bottle first.`,
  'injection/start-above-peak': (f, show) =>
    `A start at ${show.quantity(f.start, 'boost')} lies above peak boost, ${show.quantity(f.peak, 'boost')}: the spray never begins.`,
  'injection/boost-alone-over-feeds': (f, show) =>
    `Metered by boost alone the spray doesn’t know engine speed: at ${show.quantity(f.engineSpeed_rad_s, 'engineSpeed')} it brings ${show.number(f.most, 1)} times the need. Metered by injector duty or air mass it follows the fuel.`,
  'injection/spray-alone': () =>
    'Spray alone brings no power, or costs some, until boost or spark use the room it makes.',
  'injection/power-costs-where': (f, show) =>
    `Over-fed from ${show.quantity(f.from, 'engineSpeed')} to ${show.quantity(f.to, 'engineSpeed')}, up to ${show.number(f.most, 2)} times the need: look for the loss there.`,
  'injection/guide-later-start': (f, show) =>
    `First: start later, from ${show.quantity(f.from, 'boost')} to ${show.quantity(f.to, 'boost')}, and drive again.`,
  'injection/guide-smaller-nozzle': (f, show) =>
    `Then: a smaller nozzle, ${f.choice}, ${show.quantity(f.delivered, 'volumeFlow')}, ${show.number(f.feed, 2)} times the need.`,
  'injection/guide-no-smaller-nozzle': () =>
    'Then: a smaller nozzle; none on the list is smaller and still large enough.',
  'injection/guide-use-the-room': (f, show) =>
    `Or use the room: boost in small steps${f.boost === null ? '' : ` up to ${show.quantity(f.boost, 'boost')}`}, then spark, each driven and judged on its own. Either can destroy the engine in seconds: stop at the first sign of knock.`,
  'injection/tank-empties': (f, show) =>
    `The tank holds ${show.number(f.pulls, 1)} pulls above the reserve: plan a refill into the day.`,
  'injection/reserve-too-small': (f, show) =>
    `The reserve of ${show.quantity(f.reserve, 'tankVolume', 2)} is less than two pulls of ${show.quantity(f.perPull, 'smallVolume')}: the light comes on too late.`,
  'injection/refill-differs': (f, show) =>
    `Refills differ from the plan by ${show.difference(f.difference, 'share', 0)}: ${show.quantity(f.used, 'tankVolume', 2)} used, ${show.quantity(f.planned, 'tankVolume', 2)} planned. Look for a leak or a clogged nozzle before the next pull.`,
  'injection/refill-agrees': (f, show) =>
    `Refills agree with the plan within ${show.difference(f.difference, 'share', 0)}: ${show.quantity(f.used, 'tankVolume', 2)} used, ${show.quantity(f.planned, 'tankVolume', 2)} planned.`,
  'injection/endurance-from-log': (f, show) =>
    `Fluid per pull from logged flow, ${f.pulls === 1 ? 'one pull' : `${f.pulls} pulls`}: ${show.quantity(f.perPull, 'smallVolume')}; planned ${show.quantity(f.planned, 'smallVolume')}.`,
  'injection/log-differs': (f, show) =>
    `A logged pull took ${show.quantity(f.perPull, 'smallVolume')}, ${show.difference(f.difference, 'share', 0)} against the plan. Either it was driven at another boost or to other points, or a nozzle clogs or a line leaks.`,
  'injection/fallback': (f, show) =>
    f.from === 'sound'
      ? `Without fluid fall back to ${show.quantity(f.boost, 'boost')}, the boost this engine has shown knock-free without it, and to the spark of that boost. Prove it at low boost before you rely on it.`
      : `Without fluid fall back to ${show.quantity(f.boost, 'boost')}, a step below where this engine knocked, and to the spark of that boost. Prove it at low boost before you rely on it.`,
  'injection/fallback-unknown': () =>
    'Nothing is known of this engine without fluid, so no fallback can be named. Drive a baseline without spray first.',
  'injection/fallback-quickly': (f, show) =>
    `The fallback must act within ${show.quantity(f.seconds, 'time', 1)} of a lost flow or pressure; a tank float alone is too slow (common practice).`,
};
