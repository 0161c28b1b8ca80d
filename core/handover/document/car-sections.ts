import type { FitRuleId } from '../../fit/index.ts';
import { noteText, screenWords, wordsOf } from '../../words/index.ts';
import type { Block, Fact, Section } from './handover-document.ts';
import type { Teller } from './teller.ts';

/** The car, its engine, and what the fit review found. */
export function carSection(teller: Teller): Section {
  const { facts, words, show, value, fact, options } = teller;
  const { car, engine, fit } = facts;
  const half = value(car.massUncertainty_kg, 'kg', 'mass');
  const mass = value(car.mass_kg, 'kg', 'mass') ?? '';
  const rows: Fact[] = [
    fact(words.name, car.name === '' ? null : car.name),
    fact(words.mass, half === null ? mass : words.massWith(mass, half)),
  ];
  const blocks: Block[] = [];
  if (engine) {
    const compressor = engine.compressor as keyof (typeof options)['engine.compressor'] | null;
    const parts = [
      ...(engine.displacement_L === null ? [] : [`${show.number(engine.displacement_L, 1)}\u00a0L`]),
      ...(engine.cylinders === null ? [] : [words.cylinders(engine.cylinders)]),
      ...(engine.compressionRatio === null
        ? []
        : [words.compression(show.number(engine.compressionRatio, 1))]),
      ...(compressor === null ? [] : [words.inText(options['engine.compressor'][compressor])]),
    ];
    const ethanol =
      engine.ethanol_percent > 0 ? show.quantity(engine.ethanol_percent / 100, 'share', 0) : null;
    rows.push(
      fact(words.engine, parts.length > 0 ? words.engineOf(parts) : null),
      fact(
        words.fuel,
        engine.octane_RON === null ? null : words.octane(show.number(engine.octane_RON), ethanol),
      ),
    );
  }
  rows.push(fact(words.fit, fit ? words.fitPassed(fit.passed, fit.asked) : words.fitNone));
  blocks.push({ kind: 'facts', facts: rows });
  if (!engine) blocks.push({ kind: 'text', text: words.setupNone, look: 'warn' });
  const rules = wordsOf(show.language).fitRules;
  const list = (title: string, ids: readonly string[], say: (id: FitRuleId) => string): void => {
    if (ids.length === 0) return;
    blocks.push(
      { kind: 'heading', text: title },
      { kind: 'list', isOrdered: false, items: ids.map((id) => say(id as FitRuleId)) },
    );
  };
  list(words.fitToFix, fit?.toFix ?? [], (id) => `${rules[id].remedy} ${rules[id].reason}`);
  list(words.fitUnanswered, fit?.unanswered ?? [], (id) => rules[id].question);
  return { id: 'car', title: words.car, blocks };
}

/** Conditions, correction standard, repeatability, and the method in five lines. */
export function methodSection(teller: Teller): Section {
  const { facts, words, show, value, fact } = teller;
  const { conditions, method, car } = facts;
  const percent = (v: number, digits: number) => show.quantity(v / 100, 'share', digits);
  const factors = method.correctionFactors;
  const correction =
    car.correction === 'none'
      ? words.noCorrection
      : factors === null
        ? car.correction
        : words.correctionBy(car.correction, show.number(factors[0], 3), show.number(factors[1], 3));
  const drift =
    method.drift_percent === null || method.driftHalf_percent === null
      ? words.driftUnknown
      : words.driftPerPull(
          show.difference(method.drift_percent / 100, 'share', 2),
          show.quantity(method.driftHalf_percent / 100, 'share', 2),
        );
  const rows: Fact[] = [
    fact(words.day, show.date(facts.session.createdAt.slice(0, 10))),
    fact(words.place, conditions.place === null ? null : words[conditions.place]),
    fact(words.gear, car.gears.length === 0 ? null : car.gears.join(', ')),
    fact(words.air, value(conditions.ambient_C, 'C', 'temperature', 0)),
    fact(words.barometer, value(conditions.barometer_kPa, 'kPa', 'pressure', 1)),
    fact(
      words.humidity,
      conditions.relativeHumidity_percent === null ? null : percent(conditions.relativeHumidity_percent, 0),
    ),
    fact(words.grade, conditions.grade_percent === null ? null : percent(conditions.grade_percent, 1)),
    fact(words.correction, correction),
    fact(words.pullsCounted, `${method.pulls}`),
    fact(
      words.repeatability,
      method.repeatability_percent === null ? null : words.repeats(percent(method.repeatability_percent, 2)),
    ),
    fact(words.drift, drift),
    fact(words.margin, `± ${percent(method.margin_percent, 1)}`),
  ];
  const isDyno = method.bases.length > 0 && method.bases.every((b) => b.endsWith('-channel'));
  const lines = [...words.methodLines];
  if (isDyno) lines[0] = words.methodLineDyno;
  return {
    id: 'method',
    title: words.measured,
    isKeptWhole: true,
    blocks: [
      { kind: 'facts', facts: rows },
      { kind: 'list', isOrdered: true, items: lines },
    ],
  };
}

/** What was not proven, each with what it is about. */
export function limitsSection(teller: Teller): Section {
  const { facts, words, show, source, titleOf, sentenceOf, value } = teller;
  const said = words.limitLines;
  const gateNames = screenWords(show.language).ladder.gates;
  const items = facts.limits.flatMap(({ code, entry: number }): string[] => {
    const about = { number: `${number}`, title: number === null ? '' : titleOf(number) };
    switch (code) {
      case 'band': {
        const band = facts.result?.band_rpm ?? [0, 0];
        const [from, to] = band.map((rpm) => value(Math.round(rpm / 10) * 10, 'rpm', 'engineSpeed') ?? '');
        return [said.band({ from: from ?? '', to: to ?? '' })];
      }
      case 'level':
        return [said.level({ half: value(facts.method.levelHalf_kW, 'kW', 'power') ?? '' })];
      case 'not-judged': {
        const entry = number === null ? undefined : source.session.ledger[number];
        const verdict = source.ledger.lines.find((l) => l.entryId === entry?.id)?.verdict;
        return [said['not-judged']({ ...about, why: entry && verdict ? sentenceOf(verdict, entry) : '' })];
      }
      case 'otherwise':
        return [
          said.otherwise({ why: (source.whole?.doubts ?? []).map((n) => noteText(n, show)).join(' ') }),
        ];
      case 'undecided':
      case 'single-pull':
        return [said[code](about)];
      case 'unwatched': {
        const names = facts.gates.filter((g) => g.closest === null).map((g) => gateNames[g.quantity]);
        return [said.unwatched({ names: names.join(', ') })];
      }
      case 'fit': {
        const open = (facts.fit?.toFix.length ?? 0) + (facts.fit?.unanswered.length ?? 0);
        return [said.fit({ count: `${open}` })];
      }
      default:
        return [said[code]()];
    }
  });
  return {
    id: 'limits',
    title: words.limits,
    blocks: [{ kind: 'list', isOrdered: false, items }],
  };
}
