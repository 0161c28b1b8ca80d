import type { BoostEnd, GateAction, GateQuantity } from '../../ladder/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const ladderProblems: ProblemWordsOf<'ladder'> = {};

/** What a gate watches, as a person calls it. */
export const gateNames: { readonly [G in GateQuantity]: string } = {
  knock: 'Knock',
  lambda: 'Leanest mixture',
  fluidPressure: 'Fluid pressure',
  fluidFlow: 'Fluid flow',
  fuelPressure: 'Fuel pressure held',
  exhaust: 'Exhaust temperature',
  injectorDuty: 'Injector duty',
  fuelPump: 'Fuel pump delivery',
  mapSensor: 'Manifold pressure sensor',
  boostCeiling: 'Boost ceiling',
  intake: 'Intake temperature',
  fluidLeft: 'Fluid left',
};

/** What to do when a gate closes. */
export const gateActionWords: { readonly [A in GateAction]: string } = {
  'stop-then-half-step': 'stop, go back to the last good entry, then try half the step',
  'back-to-last-good':
    'go back to the last good entry; more fluid, cooler air or less boost before trying again',
  'stop-and-check-fuel': 'stop and check pump, filter, injectors and fuel pressure',
  'stop-and-check-fluid': 'stop and check tank, pump, filter and nozzle',
  'hold-boost': 'no more boost',
  'richer-or-less-spark': 'stop: richer, or less load, before the next pull',
  'cool-down': 'let it cool down before the next pull',
  refill: 'refill the tank before the next pull',
};

const ends: Record<BoostEnd, string> = {
  target: 'the target is reached',
  'boost-ceiling': 'your own boost ceiling',
  'map-sensor': 'the manifold pressure sensor, or its ceiling, ends there',
  injectors: 'the fuel injectors reach their duty limit',
  'fuel-pump': 'the fuel pump delivers no more',
  fluid: 'pump and nozzle can’t feed more boost',
  intake: 'the intake temperature reaches its limit',
  'predicted-knock': 'the predicted knock edge lies there',
  'measured-knock': 'it knocked just above',
};

export const ladderNotes: NoteWordsOf<'ladder'> = {
  'ladder/gate': (f, show) => {
    const told = f.measured ?? f.predicted?.[f.isLowest ? 0 : 1] ?? null;
    const limit = `limit ${f.isLowest ? 'at least' : 'below'} ${show.quantity(f.limit, f.kind)}`;
    const level =
      told === null
        ? 'no channel tells: look yourself'
        : `${f.measured === null ? 'expected ' : ''}${show.quantity(told, f.kind)}`;
    const close =
      f.closeness !== null && Number.isFinite(f.closeness)
        ? `, ${show.quantity(f.closeness, 'share', 0)} of the way`
        : '';
    return `${gateNames[f.quantity]}: ${level} (${limit}${close})${f.state === 'closed' ? ', closed.' : '.'}`;
  },
  'ladder/baseline-first': (f) =>
    `First where the car stands: ${f.pulls} full pulls in one gear, spray off, cool-down between.`,
  'ladder/prove-the-spray': (f, show) =>
    `Spray on from ${show.quantity(f.start, 'boost')}, full at ${show.quantity(f.full, 'boost')}, nothing else changed. See flow and pressure arrive. Expect nothing or a little less; a loss beyond ${show.quantity(f.loss, 'share', 0)} means over-feed.`,
  'ladder/boost-first': (f, show) =>
    `Boost before spark, one step of ${show.span(f.size, 'boost')} (common practice).`,
  'ladder/half-near-edge': (f, show) =>
    `Half a step: the knock edge is expected near ${show.quantity(f.edge, 'boost')}.`,
  'ladder/half-after-knock': (f, show) => `Half a step: it knocked at ${show.quantity(f.knocked, 'boost')}.`,
  'ladder/boost-ends': (f, show) => `Boost ends at ${show.quantity(f.boost, 'boost')}: ${ends[f.end]}.`,
  'ladder/spark-after-boost': (f, show) =>
    `Spark follows boost in the loaded cells: an estimated ${show.quantity(f.left, 'angle')} to ${show.quantity(f.most, 'angle')} are left.`,
  'ladder/spark-half': (f, show) =>
    `Half a degree: only ${show.quantity(f.left, 'angle')} are sure, ${show.quantity(f.most, 'angle')} at most.`,
  'ladder/spark-ends': (f, show) =>
    `Spark ends at ${show.quantity(f.spark, 'angle')} over the baseline: the last degrees bring nothing.`,
  'ladder/spark-brings-little': () =>
    'The last step of spark brought less than your margin: the top of the torque hill is near, more only brings knock.',
  'ladder/spark-knocked': (f, show) =>
    `It knocked with ${show.quantity(f.spark, 'angle')} over the baseline: no more spark without more fluid or cooler air.`,
  'ladder/no-spark-left': (f, show) =>
    `No whole step of spark is left (${show.quantity(f.left, 'angle')} at most).`,
  'ladder/mixture-last': (f, show) =>
    `Mixture last: target ${show.quantity(f.from, 'lambda', 2)} to ${show.quantity(f.to, 'lambda', 2)}, as the spray now holds what the rich mixture held.`,
  'ladder/drive-again': (f) =>
    `After ${f.after} changes an earlier entry is driven again: if it moved, the day moved.`,
  'ladder/no-shown-point': () =>
    'No boost is known at which this engine ran without knock: no headroom can be reckoned, so every step is half a step.',
  'ladder/fuelling-unknown': () =>
    'How the engine control finds its fuel is not given: taken as closed loop on lambda. Check this before touching a table.',
  'ladder/fit-open': (f) =>
    `${f.count} ${f.count === 1 ? 'point' : 'points'} of the fit review are open. Unanswered is not passed: settle them first.`,
  'ladder/closed-road': () =>
    'Pulls belong on a closed or private road: the driver drives, the passenger works the laptop.',
  'ladder/dyno-cell': () =>
    'Strap the car down, keep the cell aired and a powder extinguisher at hand before the first pull.',
  'ladder/methanol-care': () =>
    'Methanol poisons through skin and breath and burns with a flame that can’t be seen by day: gloves, air, water at hand.',
  'ladder/boost-breaks-engines': () =>
    'Too much boost destroys an engine in seconds. One step, then look at every gate before the next.',
  'ladder/spark-breaks-engines': () =>
    'Too much spark destroys an engine in seconds, and knock is not always heard. One step in the loaded cells only.',
  'ladder/prove-the-fallback': (f, show) =>
    f.boost === null
      ? 'Before relying on the spray prove that the engine falls back by itself when the fluid fails; what it falls back to is not set yet.'
      : `Before relying on the spray prove that the engine falls back to ${show.quantity(f.boost, 'boost')} by itself when the fluid fails.`,
  'ladder/do-not-press-on': () =>
    'Don’t press on past this: the next pull may be the one that breaks the engine.',
  'ladder/now-baseline': (f) => `Drive the baseline: ${f.pulls} pulls, spray off.`,
  'ladder/now-go-back': (f) =>
    `Go back to ${f.toBaseline ? 'the baseline' : 'the last good entry'}: ${gateActionWords[f.action]}.`,
  'ladder/now-stop': (f) => `Stop: ${gateActionWords[f.action]}.`,
  'ladder/now-wait': (f, show) =>
    `Wait: ${gateActionWords[f.action]}${f.action === 'cool-down' ? `, ${show.quantity(f.coolDown, 'time', 0)} or more` : ''}.`,
  'ladder/now-drive': (f) => `Drive it: ${f.pulls} pulls, then look.`,
  'ladder/now-drive-again': () =>
    'Drive it again: what was driven can’t be compared, the reasons stand with the verdict.',
  'ladder/now-more-pulls': (f) =>
    `${f.more} more ${f.more === 1 ? 'pull' : 'pulls'} on each side would decide it.`,
  'ladder/now-mend-the-spray': (f, show) =>
    `Mend the spray before anything else: it cost ${show.quantity(f.loss, 'share')}, more than ${show.quantity(f.allowed, 'share', 0)} is over-feed.`,
  'ladder/now-loss': (f, show) => `Take the last change back: it cost ${show.quantity(f.loss, 'share')}.`,
  'ladder/now-fit': (f) =>
    `Finish the fit review: ${f.count === 1 ? 'one point is' : `${f.count} points are`} open, and the spray stays off until then. Unanswered is not passed.`,
  'ladder/now-spray': (f, show) =>
    `Turn the spray on, from ${show.quantity(f.to ?? 0, 'boost')}, and prove it.`,
  'ladder/now-boost': (f, show) =>
    `Boost ${show.quantity(f.from ?? 0, 'boost')} to ${show.quantity(f.to ?? 0, 'boost')}.`,
  'ladder/now-spark': (f, show) =>
    `Spark ${show.difference((f.to ?? 0) - (f.from ?? 0), 'angle')} in the loaded cells.`,
  'ladder/now-mixture': (f, show) =>
    `Mixture target ${show.quantity(f.from ?? 0, 'lambda', 2)} to ${show.quantity(f.to ?? 0, 'lambda', 2)}.`,
  'ladder/now-nothing': () => 'Drive an earlier entry again, to see whether the day moved.',
  'ladder/now-done': () =>
    'The ladder is at its end. Save the settings, prove the fallback, write the handover.',
};
