import { fail, type Note, ok, type Result } from '../result/index.ts';
import type { Channel, Log } from './channel.ts';
import { type ColumnMapping, measures } from './columns/column-mapping.ts';
import { type Letters, settlePositions } from './columns/positions.ts';
import { type ColumnMeaning, type RawColumn, recogniseColumns } from './columns/recognise.ts';
import { turnFallingOpenings } from './pedal/falling-opening.ts';
import { acrossShortGaps } from './pulls/short-gaps.ts';
import { siScale } from './si-scale.ts';
import { spreadOf } from './spread.ts';
import type { ColumnStore } from './table/column-store.ts';
import type { Encoding } from './table/encoding.ts';
import type { Layout } from './table/layout.ts';
import type { RowNews } from './table/odd-rows.ts';
import { fillHeld } from './time/held.ts';
import { toOneTime } from './time/own-times.ts';
import { type FlaggedColumn, footRows, turnNewestFirst } from './time/row-order.ts';
import { type FoundTime, readTime } from './time/time-column.ts';

export type ReadColumns = {
  readonly file: string;
  readonly layout: Layout;
  readonly encoding: Encoding;
  readonly store: ColumnStore;
  readonly news: RowNews;
  readonly mapping: readonly ColumnMapping[];
  readonly sampleRate_Hz: number | null;
};

/** From columns of numbers to a log: meanings, time axis, held values, SI. */
export function finishLog(read: ReadColumns): Result<Log> {
  const { file, layout, news, mapping } = read;
  if (layout.misfit) {
    const { line, isCommaTwice, names, columns } = layout.misfit;
    return fail({
      code: isCommaTwice ? 'log/comma-twice' : 'log/names-uneven',
      facts: { names, columns },
      where: { file, line },
    });
  }
  for (const m of mapping) {
    if (m.quantity !== null && !measures(m.unit, m.quantity))
      return fail({
        code: 'log/mapping-unit',
        facts: { unit: m.unit, quantity: m.quantity },
        where: { file, column: m.column },
      });
  }
  let cells: FlaggedColumn[] = [];
  let kinds: (RowNews['cellKinds'][number] | undefined)[] = [];
  read.store.take().forEach(({ values, flags: f }, c) => {
    const name = layout.names[c] ?? '';
    const spread = spreadOf(values);
    const isLetters = lettersIn(news.cellKinds[c], spread.count) !== null;
    // A trailing delimiter makes a column that nobody meant.
    if (layout.isNameless[c] && spread.count === 0 && !isLetters) return;
    const unitRow = layout.unitRow[c] ?? '';
    cells.push({ column: { name, unitRow, gluedUnit: news.gluedUnits[c] ?? '', values, spread }, flags: f });
    kinds.push(news.cellKinds[c]);
  });
  const turned = turnNewestFirst(cells);
  const joined = toOneTime(cells);
  if (joined) {
    cells = joined.columns;
    kinds = joined.places.map((c) => kinds[c]);
  }
  let understood = understand(read, cells, kinds);
  if (!understood.ok) return understood;
  const foot = footOf(understood.value);
  if (foot > 0) {
    understood = understand(read, cells.map(withoutLast(foot)), kinds);
    if (!understood.ok) return understood;
  }
  const { columns, flags, meanings, time } = understood.value;
  const { axis, column: timeColumn, unit: timeUnit, format } = time;
  let blank: Uint8Array | null = null;
  const channels = columns.map((column, c): Channel => {
    const meaning = meanings[c];
    const flag = flags[c] ?? new Uint8Array(column.values.length);
    if (c === timeColumn)
      return {
        column: column.name,
        quantity: 'time',
        unit: timeUnit,
        confidence: time.confidence,
        reason: time.reason,
        values: axis.time,
        flags: flag,
      };
    // Columns without a flag share one array: it is searched once.
    if (flag !== blank && !fillHeld(column.values, flag, axis.segments)) blank = flag;
    return channelOfColumn(column, meaning, flag);
  });
  const settled = settlePositions(
    channels,
    cells.map(({ column }, c) => lettersIn(kinds[c], column.spread.count)),
  );
  const log: Log = {
    file,
    time: axis.time,
    channels: settled,
    segments: axis.segments,
    warnings: [
      ...encodingNote(read.encoding),
      ...rowWarnings(news, layout),
      ...(turned ? [turned] : []),
      ...(joined ? [joined.note] : []),
      ...(foot > 0 ? [{ code: 'log/foot-left-out', facts: { count: foot } } as const] : []),
      ...(layout.unnamed > 0 ? [unnamedNote(layout)] : []),
      ...assumedUnits(columns, meanings),
      ...turnFallingOpenings({ channels: settled }),
      ...time.warnings,
      ...mappingNotes(mapping, columns),
    ],
    style: {
      encoding: read.encoding,
      delimiter: layout.delimiter,
      decimal: layout.decimal,
      headerLine: layout.headerLine,
      firstDataLine: layout.firstDataLine,
      timeFormat: format,
    },
  };
  return ok(acrossShortGaps(log));
}

function lettersIn(kinds: RowNews['cellKinds'][number] | undefined, numbers: number): Letters {
  const [kind, ...others] = [...(kinds?.keys() ?? [])];
  if (numbers > 0 || others.length > 0) return null;
  return kind === 'northSouth' ? 'latitude' : kind === 'eastWest' ? 'longitude' : null;
}

type Understood = {
  readonly columns: readonly RawColumn[];
  readonly flags: readonly Uint8Array[];
  readonly meanings: readonly ColumnMeaning[];
  readonly time: FoundTime;
};

/** What the columns mean, and the clock among them. */
function understand(
  { layout, mapping, sampleRate_Hz, file }: ReadColumns,
  cells: readonly FlaggedColumn[],
  kinds: readonly (RowNews['cellKinds'][number] | undefined)[],
): Result<Understood> {
  const columns = cells.map((c) => c.column);
  const meanings = recogniseColumns(columns, mapping);
  const time = readTime({
    columns,
    meanings,
    kinds,
    preamble: layout.preamble,
    sampleRate_Hz,
    file,
    headerLine: layout.headerLine,
    firstDataLine: layout.firstDataLine,
  });
  return time.ok ? ok({ columns, flags: cells.map((c) => c.flags), meanings, time: time.value }) : time;
}

function footOf({ columns, time }: Understood): number {
  const clock = time.column === null ? undefined : columns[time.column];
  return clock ? footRows(clock.values) : 0;
}

function withoutLast(rows: number) {
  return ({ column, flags }: FlaggedColumn): FlaggedColumn => {
    const values = column.values.subarray(0, column.values.length - rows);
    return {
      column: { ...column, values, spread: spreadOf(values) },
      flags: flags.subarray(0, values.length),
    };
  };
}

function channelOfColumn(column: RawColumn, meaning: ColumnMeaning | undefined, flags: Uint8Array): Channel {
  const isQuantity =
    meaning &&
    meaning.quantity !== null &&
    meaning.quantity !== 'sample' &&
    meaning.quantity !== 'date' &&
    meaning.quantity !== 'time';
  if (!isQuantity)
    return {
      column: column.name,
      quantity: null,
      unit: meaning?.unit ?? '',
      confidence: 0,
      reason: meaning?.quantity === null ? meaning.reason : { code: 'log/column-unknown', facts: {} },
      values: column.values,
      flags,
    };
  const quantity = meaning.quantity as Exclude<typeof meaning.quantity, 'sample' | 'date' | null>;
  const { values } = column;
  const scale = siScale(quantity, meaning.unit);
  if (scale && (scale.factor !== 1 || scale.offset !== 0)) rescale(values, scale.factor, scale.offset);
  // Loggers print retard as a negative advance or as its size: the size is kept.
  if (quantity === 'knockRetard' && column.spread.min < 0 && column.spread.max <= 0) rescale(values, -1, 0);
  return {
    column: column.name,
    quantity,
    unit: meaning.unit,
    confidence: meaning.confidence,
    reason: meaning.reason,
    values,
    flags,
  };
}

function rescale(values: Float64Array, factor: number, offset: number): void {
  for (let i = 0; i < values.length; i++) values[i] = (values[i] as number) * factor + offset;
}

/** What the bytes alone don't say was settled by the words of the header. */
function encodingNote(encoding: Encoding): Note[] {
  const isUsual = encoding.startsWith('utf') || encoding === 'windows-1252';
  return isUsual ? [] : [{ code: 'log/encoding-by-words', facts: { encoding } }];
}

function unnamedNote(layout: Layout): Note {
  return {
    code: 'log/columns-unnamed',
    facts: { count: layout.unnamed, columns: layout.columns, line: layout.headerLine },
  };
}

/** A speed whose unit nothing tells is named: 40 % of 60 are too few to be seen in a curve. */
function assumedUnits(columns: readonly RawColumn[], meanings: readonly ColumnMeaning[]): Note[] {
  return columns.flatMap((column, c): Note[] => {
    const meaning = meanings[c];
    const isSpeed = meaning?.quantity === 'vehicleSpeed' || meaning?.quantity === 'gpsSpeed';
    const isGuessed = isSpeed && meaning.reason.code === 'log/column-by-values';
    return isGuessed
      ? [{ code: 'log/speed-unit-assumed', facts: { column: column.name, unit: meaning.unit } }]
      : [];
  });
}

function rowWarnings(news: RowNews, { filledColumns, delimiter }: Layout): Note[] {
  const notes: Note[] = [];
  if (news.headersRepeated > 0)
    notes.push({
      code: 'log/header-repeated',
      facts: { count: news.headersRepeated, firstLine: news.firstRepeatedLine },
    });
  if (news.rowsSkipped > 0)
    notes.push({
      code: 'log/rows-skipped',
      facts: { count: news.rowsSkipped, firstLine: news.firstSkippedLine },
    });
  if (news.rowsWide > 0)
    notes.push({
      code: 'log/rows-wide',
      facts: {
        count: news.rowsWide,
        firstLine: news.firstWideLine,
        columns: filledColumns,
        isCommaParted: delimiter === ',',
      },
    });
  if (news.zeroRows > 0)
    notes.push({ code: 'log/zero-rows', facts: { count: news.zeroRows, firstLine: news.firstZeroLine } });
  if (news.otherTableLine > 0) notes.push({ code: 'log/other-table', facts: { line: news.otherTableLine } });
  if (news.cutLine > 0) notes.push({ code: 'log/last-row-cut', facts: { line: news.cutLine } });
  if (news.paddedBytes > 0) notes.push({ code: 'log/padded-tail', facts: { bytes: news.paddedBytes } });
  return notes;
}

function mappingNotes(mapping: readonly ColumnMapping[], columns: readonly RawColumn[]): Note[] {
  const names = new Set(columns.map((c) => c.name));
  const notes: Note[] = mapping
    .filter((m) => !names.has(m.column))
    .map((m) => ({ code: 'log/mapping-unused', facts: { column: m.column } }));
  const count = mapping.filter((m) => m.isFromProfile && names.has(m.column)).length;
  if (count > 0) notes.push({ code: 'log/profile-used', facts: { count } });
  return notes;
}
