import { chosenUnit, toSi } from '../../units/index.ts';
import { typedDecimals } from '../../words/index.ts';
import type { HandoverFacts } from '../facts/index.ts';
import type { Block, Cell, Section } from './handover-document.ts';
import type { Teller } from './teller.ts';

type SparkTable = HandoverFacts['sparkTables'][number];

/** More columns than this are not read on paper; the rest goes into a table of its own below. */
const mostColumns = 16;

/** First and last index with a change, null where there is none. */
function rangeOf(lines: readonly (readonly number[])[]): readonly [number, number] | null {
  const changed = lines.flatMap((line, i) => (line.some((v) => v !== 0) ? [i] : []));
  const [first] = changed;
  const last = changed.at(-1);
  return first === undefined || last === undefined ? null : [first, last];
}

/** Loads as the customer reads pressure; a throttle in percent. */
function loadWords({ load }: SparkTable, { show, words }: Teller) {
  const kind = load.kind === 'absolute' ? 'pressure' : load.kind === 'gauge' ? 'boost' : 'share';
  const title = `${words.loadAxis[load.kind]}, ${show.unit(kind)}`;
  // In the unit it was written in it keeps its digits.
  const isOwn = chosenUnit(show.units, kind).id === load.unit;
  const digits = isOwn ? Math.max(...load.values.map(typedDecimals)) : undefined;
  return { title, text: (value: number) => show.bare(toSi(value, load.unit), kind, digits) };
}

function blocksOf(table: SparkTable, teller: Teller): Block[] {
  const { words, show } = teller;
  const since = show.date(table.readAt.slice(0, 10));
  const loads = rangeOf(table.change_deg);
  const speeds = rangeOf(table.engineSpeed_rpm.map((_, c) => table.change_deg.map((row) => row[c] ?? 0)));
  const remarks: string[] = [];
  if (table.changesWithout.length > 0)
    remarks.push(words.sparkTableWithout(table.changesWithout.join(', '), table.changesWithout.length));
  if (!table.isInLedger) remarks.push(words.sparkTableOpen);
  const remarkBlock: Block[] =
    remarks.length > 0 ? [{ kind: 'text', text: remarks.join(' '), look: 'small' }] : [];
  if (!loads || !speeds)
    return [{ kind: 'text', text: words.sparkTableSame(table.name, since) }, ...remarkBlock];
  const axis = loadWords(table, teller);
  // Tables are written in steps of a half, a quarter or a tenth of a degree.
  const digits = Math.max(1, ...table.change_deg.flat().map((v) => typedDecimals(Number(v.toFixed(2)))));
  const cell = (delta: number): Cell =>
    delta === 0 ? { text: '·' } : { text: show.signed(delta, digits), tone: delta > 0 ? 'gain' : 'loss' };
  const tables: Block[] = [];
  const columns = speeds[1] + 1 - speeds[0];
  // Tables of like width, so that no last one of a column or two stretches over the sheet.
  const each = Math.ceil(columns / Math.ceil(columns / mostColumns));
  for (let from = speeds[0]; from <= speeds[1]; from += each) {
    const to = Math.min(speeds[1] + 1, from + each);
    tables.push({
      kind: 'table',
      caption: words.sparkTable(table.name),
      isSmall: true,
      columns: [
        { title: axis.title, isFigure: true },
        ...table.engineSpeed_rpm.slice(from, to).map((rpm) => ({
          title: show.number(rpm, 0),
          group: `${words.engineSpeed}, ${show.unit('engineSpeed')}`,
          isFigure: true,
        })),
      ],
      rows: table.change_deg.slice(loads[0], loads[1] + 1).map((row, i) => ({
        cells: [{ text: axis.text(table.load.values[loads[0] + i] ?? 0) }, ...row.slice(from, to).map(cell)],
      })),
      scale: null,
    });
  }
  return [
    { kind: 'text', text: words.sparkTableLead(table.name, since, table.cells), look: 'small' },
    ...tables,
    ...remarkBlock,
  ];
}

/** What the spark tables as left differ in from those that were read, over engine speed and load. */
export function sparkSection(teller: Teller): Section {
  const { facts, words } = teller;
  const { sparkTables } = facts;
  return {
    id: 'spark',
    title: words.sparkTables,
    isKeptWhole: sparkTables.length <= 1,
    blocks:
      sparkTables.length === 0
        ? [{ kind: 'text', text: words.tablesNone }]
        : sparkTables.flatMap((table) => blocksOf(table, teller)),
  };
}
