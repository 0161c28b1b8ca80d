import { csvText } from '../injection/index.ts';
import type { HandoverFacts } from './facts/index.ts';

type Value = string | number | boolean | null;
type Rows = (readonly (string | number)[])[];

const cell = (value: Value | undefined) =>
  value === null || value === undefined ? '' : typeof value === 'boolean' ? (value ? 'yes' : 'no') : value;

/** Single values of a part of the facts, name by name; lists of their own follow as tables. */
function named(part: string, values: object): Rows {
  return Object.entries(values).flatMap(([key, value]): Rows => {
    const name = `${part}.${key}`;
    if (value === null || typeof value !== 'object') return [[name, cell(value as Value)]];
    if (!Array.isArray(value)) return named(name, value);
    // A pair of numbers is low and high; a list of words goes into one cell.
    if (value.every((v) => typeof v !== 'object'))
      return value.length === 2 && value.every((v) => typeof v === 'number')
        ? [
            [`${name}.low`, value[0] as number],
            [`${name}.high`, value[1] as number],
          ]
        : [[name, value.join(' ')]];
    return [];
  });
}

function table(title: string, columns: readonly string[], rows: Rows): Rows {
  return [[], [title], columns, ...rows];
}

/**
 * The numbers of the summary as CSV: first one value a line with its unit in the name, then tables, each under its
 * title. Texts that a spreadsheet would take for a formula are disarmed; an empty cell is unknown.
 */
export function handoverCsv(facts: HandoverFacts): string {
  const { session, customer, shop, note, date, curves } = facts;
  const rows: Rows = [
    ['name', 'value'],
    ['date', date],
    ...named('session', session),
    ['customer', customer],
    ['shop', shop],
    ['note', note],
    ...(['car', 'engine', 'fit', 'asLeft', 'result', 'fluid', 'conditions', 'method'] as const).flatMap(
      (part) => named(part, facts[part] ?? {}),
    ),
    ...named('protection', facts.protection),
    ...table(
      'changes',
      [
        'entry',
        'kind',
        'title',
        'from',
        'from_unit',
        'to',
        'to_unit',
        'where',
        'state',
        'pulls',
        'level_kW',
        'verdict',
        'effect_kW',
        'low95_kW',
        'high95_kW',
        'effect_percent',
        'adjusted_p',
        'stands_adjusted',
        'note',
      ],
      facts.changes.map((c) =>
        [
          c.entry,
          c.kind,
          c.title,
          c.change?.from?.value ?? null,
          c.change?.from?.unit ?? '',
          c.change?.to?.value ?? null,
          c.change?.to?.unit ?? '',
          c.change?.where ?? '',
          c.state,
          c.pulls,
          c.level_kW,
          c.verdict,
          c.effect_kW,
          c.interval95_kW?.[0] ?? null,
          c.interval95_kW?.[1] ?? null,
          c.effect_percent,
          c.adjustedP,
          c.standsAdjusted,
          c.note,
        ].map(cell),
      ),
    ),
    ...table(
      'parts of the whole',
      ['kind', 'entries', 'effect_kW', 'low95_kW', 'high95_kW'],
      (facts.result?.parts ?? []).map((p) => [
        p.kind,
        p.entries.join(' '),
        p.effect_kW,
        p.interval95_kW[0],
        p.interval95_kW[1],
      ]),
    ),
    ...listTable('gates', facts.gates),
    ...listTable('guard band', facts.protection.guardBand),
    ...listTable('nozzles', facts.asLeft.nozzles),
    ...listTable('spark steps', facts.asLeft.sparkSteps),
    ...facts.sparkTables.flatMap(sparkTable),
    ...listTable('not proven', facts.limits),
    ...visitTables(facts.visit),
  ];
  if (curves) {
    const { engineSpeed_rpm, proven, ...sides } = curves;
    const names = Object.keys(sides) as (keyof typeof sides)[];
    rows.push(
      ...table(
        'curves',
        ['engineSpeed_rpm', ...names],
        engineSpeed_rpm.map((rpm, i) => [rpm, ...names.map((name) => cell(sides[name][i]))]),
      ),
      ...listTable('proven', proven),
    );
  }
  return csvText(rows);
}

/** The visit before and this one: what was the same, what was set, and the power where it may be compared. */
function visitTables(visit: HandoverFacts['visit']): Rows {
  if (!visit) return [];
  const level = (side: (typeof visit.power)[number]['now']) => [side?.mean_kW ?? null, side?.half_kW ?? null];
  const { conditions, settings, power, ...single } = visit;
  return [
    [],
    ...named('visit', single),
    ...listTable('visit conditions', conditions),
    ...listTable('visit settings', settings),
    ...(power.length === 0
      ? []
      : table(
          'visit power',
          [
            'what',
            'last_kW',
            'last_half95_kW',
            'now_kW',
            'now_half95_kW',
            'difference_kW',
            'difference_half95_kW',
            'is_proven',
          ],
          power.map((p) =>
            [p.what, ...level(p.last), ...level(p.now), p.difference_kW, p.differenceHalf_kW, p.isProven].map(
              cell,
            ),
          ),
        )),
  ];
}

/** A spark table twice: what it says as left, and what changed since it was read. */
function sparkTable(spark: HandoverFacts['sparkTables'][number]): Rows {
  const { name, load, engineSpeed_rpm, asLeft_deg, change_deg } = spark;
  const grid = (title: string, values: readonly (readonly number[])[]) =>
    table(
      `${title}: ${name}`,
      [`load_${load.kind}_${load.unit}`, ...engineSpeed_rpm.map((rpm) => `${rpm}_rpm`)],
      values.map((row, i) => [load.values[i] ?? '', ...row]),
    );
  return [...grid('spark as left, deg', asLeft_deg), ...grid('spark change since read, deg', change_deg)];
}

/** Records of one shape as a table; without records there is none. */
function listTable(title: string, records: readonly Readonly<Record<string, Value>>[]): Rows {
  const [first] = records;
  if (!first) return [];
  const columns = Object.keys(first);
  return table(
    title,
    columns,
    records.map((record) => columns.map((c) => cell(record[c]))),
  );
}
