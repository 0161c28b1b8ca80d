import { normalQuantile } from '../../compare/index.ts';
import { fitOf } from '../../injection/index.ts';
import { asLeftOf } from './as-left.ts';
import { dayGates, gateFacts } from './day-gates.ts';
import { edge } from './edge.ts';
import type { HandoverFacts, handoverLimits } from './facts-schema.ts';
import { fluidFacts, protectionFacts } from './fluid-facts.ts';
import { changeFacts, curveFacts, resultFacts } from './result-facts.ts';
import type { HandoverSource } from './source.ts';
import { sparkTableFacts } from './spark-facts.ts';
import { visitFacts } from './visit-facts.ts';

/**
 * Every number of the summary, from the session alone. Private notes are never read here: what is not here can't
 * be printed or exported.
 *
 * @param date  stated on the summary, ISO; the one thing that does not follow from the session
 * @param last  an earlier visit of the same car to lay beside it; null where none was named
 */
export function handoverFacts(
  source: HandoverSource,
  date: string,
  last: HandoverSource | null = null,
): HandoverFacts {
  const { session, pulls } = source;
  const { car, conditions, setup, handover } = session;
  const counted = pulls.flatMap((e) => e.pulls);
  const gears = [...new Set(counted.map((p) => p.gear))].filter((g) => g !== null).sort((a, b) => a - b);
  const fit = setup ? fitOf(setup).items.filter((i) => i.state !== 'not-here') : null;
  const idsOf = (state: string) => (fit ?? []).filter((i) => i.state === state).map((i) => i.id);
  const engine = setup?.engine ?? null;
  const facts: Omit<HandoverFacts, 'limits'> = {
    format: 'onechange-handover',
    version: 1,
    date,
    session: {
      id: session.id,
      name: session.name,
      createdAt: session.createdAt,
      isInvented: session.isInvented,
    },
    customer: handover.customer,
    shop: handover.shop,
    note: handover.note ?? session.note,
    car: {
      name: car.name,
      mass_kg: car.mass_kg,
      massUncertainty_kg: car.massUncertainty_kg,
      gears,
      correction: car.correction,
    },
    engine: engine && {
      displacement_L: engine.displacement_L,
      cylinders: engine.cylinders,
      compressionRatio: engine.compressionRatio,
      compressor: engine.compressor,
      octane_RON: engine.octane_RON,
      ethanol_percent: engine.ethanol_percent,
    },
    fit: fit && {
      passed: idsOf('passed').length,
      asked: fit.length,
      toFix: idsOf('fix'),
      unanswered: idsOf('unanswered'),
    },
    asLeft: asLeftOf(source),
    sparkTables: sparkTableFacts(session),
    result: resultFacts(source),
    curves: curveFacts(source.whole?.curve ?? null),
    changes: changeFacts(source),
    hiddenEntries: session.ledger.filter((e) => handover.hiddenEntries.includes(e.id)).length,
    gates: gateFacts(dayGates(source)),
    protection: protectionFacts(source),
    fluid: fluidFacts(source),
    conditions: {
      place: conditions.place,
      ambient_C: conditions.ambient_C,
      barometer_kPa: conditions.barometer_kPa,
      relativeHumidity_percent: conditions.relativeHumidity_percent,
      grade_percent: conditions.grade_percent,
    },
    method: methodFacts(source),
    visit: last && visitFacts(last, source),
  };
  return { ...facts, limits: limitsOf(facts, source) };
}

/** How it was measured: what power rests on, how far pulls repeat, what the day drifted. */
function methodFacts({ session, pulls, ledger, whole }: HandoverSource): HandoverFacts['method'] {
  const counted = pulls.flatMap((e) => e.pulls);
  const factors = counted
    .filter((p) => p.power.correction.standard !== 'none')
    .map((p) => p.power.correction.factor);
  const { drift, repeatability } = ledger;
  const top = whole && pulls.find((p) => p.id === whole.afterId)?.pulls[0]?.power;
  const errors = top ? [...top.systematicError].filter(Number.isFinite).sort((a, b) => a - b) : [];
  // The middle one: at the ends of a pull smoothing widens it.
  const usual = errors[Math.floor(errors.length / 2)];
  return {
    bases: [...new Set(counted.map((p) => p.power.basis))].sort(),
    correctionFactors:
      factors.length === 0
        ? null
        : [edge(Math.min(...factors), '') ?? 1, edge(Math.max(...factors), '') ?? 1],
    pulls: ledger.lines.reduce((sum, line) => sum + line.pulls, 0),
    repeatability_percent: edge(repeatability?.deviationShare, '%'),
    drift_percent: edge(drift?.perPull, '%'),
    driftHalf_percent: drift ? edge((drift.interval95[1] - drift.interval95[0]) / 2, '%') : null,
    margin_percent: session.limits.margin_percent,
    levelHalf_kW: usual === undefined ? null : edge(usual * normalQuantile(0.975), 'kW'),
  };
}

/** What the measurements leave open, said rather than left out. */
function limitsOf(facts: Omit<HandoverFacts, 'limits'>, { whole }: HandoverSource): HandoverFacts['limits'] {
  const found: HandoverFacts['limits'] = [];
  const add = (code: (typeof handoverLimits)[number], entry: number | null = null) =>
    found.push({ code, entry });
  if (facts.result) add('band');
  if (facts.method.levelHalf_kW !== null) add('level');
  if (whole && whole.doubts.length > 0) add('otherwise');
  if (facts.car.correction === 'none' && facts.method.pulls > 0) add('uncorrected');
  for (const change of facts.changes) {
    if (change.verdict === 'not-comparable') add('not-judged', change.entry);
    else if (change.verdict === 'undecided') add('undecided', change.entry);
    if (change.pulls === 1) add('single-pull', change.entry);
  }
  if (facts.gates.some((g) => g.closest === null)) add('unwatched');
  if (facts.method.drift_percent === null && facts.changes.filter((c) => c.pulls > 0).length > 3)
    add('drift');
  if (facts.fit && facts.fit.toFix.length + facts.fit.unanswered.length > 0) add('fit');
  add('lasting');
  return found;
}
