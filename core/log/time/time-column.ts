import { fail, type Note, ok, type Result } from '../../result/index.ts';
import { toSi } from '../../units/index.ts';
import type { ColumnMeaning, RawColumn } from '../columns/recognise.ts';
import { forwardShare } from '../forward-share.ts';
import type { Cell } from '../table/cell.ts';
import { areDigitsOfDay, secondsOfDigits } from './digits-of-day.ts';
import { type TimeAxis, type TimeFormat, timeAxis, timeFormatOf, usualStep } from './time-axis.ts';

export type FoundTime = {
  readonly axis: TimeAxis;
  /** Index among the columns, null where time comes from a rate. */
  readonly column: number | null;
  readonly unit: string;
  readonly format: TimeFormat;
  readonly confidence: number;
  readonly reason: Note;
  readonly warnings: readonly Note[];
};

export type TimeInput = {
  readonly columns: readonly RawColumn[];
  readonly meanings: readonly ColumnMeaning[];
  readonly kinds: readonly (ReadonlyMap<Cell['kind'], number> | undefined)[];
  readonly preamble: string;
  readonly sampleRate_Hz: number | null;
  readonly file: string;
  /** Lines of the file, for what is wrong with its time. */
  readonly headerLine: number;
  readonly firstDataLine: number;
};

/**
 * Days as spreadsheets count them, 46,000 for 2025, with the time of day behind the point: a stop watch that has run
 * for so many seconds would not move on by less than 10 microseconds.
 */
function isDayCount(stamps: Float64Array, step: number): boolean {
  const first = stamps.find((t) => !Number.isNaN(t)) ?? 0;
  return first > 20_000 && first < 80_000 && step < 1e-5 + 1 / 86_400;
}

/** Seconds since midnight of the first of the days, to the microsecond that a double of days still holds. */
function secondsOfDay(days: number): number {
  return Math.round((days % 1) * 86_400e6) / 1e6;
}

/** No engine log leaves so long between its rows (common practice). */
const slowestRow_s = 30;

/** The year 5138 by a clock that counts from 1970: a number beyond it is no time, and steps of a double grow coarse [s]. */
const latest_s = 1e11;

/**
 * Seconds since 1970 of the years 2001 to 2100: no stop watch and no engine has run for 30 years. The clock of a person
 * shows the time of day.
 */
function isSince1970(stamps: Float64Array): boolean {
  const first = stamps.find((t) => !Number.isNaN(t)) ?? 0;
  return first > 978_307_200 && first < 4_102_444_800;
}

type Candidate = { readonly index: number; readonly trust: number; readonly reason: Note };

/**
 * The time axis of a log: a column of clock times, a column called time, else one that runs on steadily, else
 * the row number at a stated rate.
 */
export function readTime(input: TimeInput): Result<FoundTime> {
  const { columns, meanings, file } = input;
  const candidates = [...namedTimes(input), ...steadyClocks(input)].sort((a, b) => b.trust - a.trust);
  const names = columns.map((c) => c.name);
  const best = candidates[0];
  const column = best && columns[best.index];
  if (!best || !column) {
    const rate = input.sampleRate_Hz ?? statedRate(input.preamble) ?? rateOfRowNumber(input);
    if (rate !== null) return ok(fromRate(input, rate));
    const curve = finishedCurve(input);
    if (curve !== null)
      return fail({
        code: 'log/curve-without-time',
        facts: { column: curve },
        where: { file, line: input.headerLine },
      });
    return fail({
      code: 'log/no-time',
      facts: { columns: names },
      where: input.headerLine > 0 ? { file, line: input.headerLine } : { file },
    });
  }
  const kind = mainKind(input, best.index);
  const stamps = column.values.slice();
  const step = usualStep(stamps);
  if (Number.isNaN(step))
    return fail({
      code: 'log/time-stands-still',
      facts: { time_s: stamps[0] ?? Number.NaN, columns: names },
      where: { file, line: input.firstDataLine, column: column.name },
    });
  const meaning = meanings[best.index];
  let unit = meaning?.quantity === 'time' ? meaning.unit : '';
  let format: TimeFormat;
  let isClock = kind === 'clock';
  if (kind === 'clock' || kind === 'stamp') {
    format = kind === 'clock' ? 'clock' : 'iso';
    unit = 's';
    if (kind === 'stamp') toTimeOfDay(stamps);
  } else {
    // `Hora` names the hour of the day as well as its unit, and some programs write s over milliseconds.
    if (isDayCount(stamps, step)) {
      isClock = true;
      unit = 's';
      for (let i = 0; i < stamps.length; i++) stamps[i] = secondsOfDay(stamps[i] ?? Number.NaN);
    } else if ((unit === '' || unit === 's') && areDigitsOfDay(stamps)) {
      isClock = true;
      unit = 's';
      for (let i = 0; i < stamps.length; i++) stamps[i] = secondsOfDigits(stamps[i] ?? Number.NaN);
    } else if (unit === '' || step * toSi(1, unit) > slowestRow_s) unit = timeFormatOf(step, stamps.length);
    const factor = toSi(1, unit);
    // Division keeps 12345 ms at 12.345 s; a product with 0.001 would not.
    const divisor = Math.round(1 / factor);
    for (let i = 0; i < stamps.length && factor !== 1; i++) {
      const v = stamps[i] as number;
      stamps[i] = factor < 1 ? v / divisor : v * factor;
    }
    if (isSince1970(stamps)) toTimeOfDay(stamps);
    format = unit === 'ms' || unit === 'us' || unit === 'min' ? unit : 's';
  }
  const beyond = droppedBeyond(stamps);
  if (beyond > 0 && (beyond > stamps.filter(Number.isFinite).length || Number.isNaN(usualStep(stamps))))
    return fail({
      code: 'log/time-no-clock',
      facts: { first: column.values.find(Number.isFinite) ?? Number.POSITIVE_INFINITY, columns: names },
      where: { file, line: input.firstDataLine, column: column.name },
    });
  const axis = timeAxis(stamps, isClock);
  return ok({
    axis,
    column: best.index,
    unit,
    format,
    confidence: best.trust,
    reason: best.reason,
    warnings: axis.warnings,
  });
}

/** The column of engine speed over which a dyno drew power or torque; null where the rows are samples of a drive. */
function finishedCurve({ columns, meanings }: TimeInput): string | null {
  const hasOutput = meanings.some((m) => /Power$|Torque$/.test(m.quantity ?? ''));
  const speed = columns[meanings.findIndex((m) => m.quantity === 'engineSpeed')];
  return hasOutput && speed && forwardShare(speed.values) === 1 ? speed.name : null;
}

/** Takes out the stamps that no clock shows, and says how many there were. */
function droppedBeyond(stamps: Float64Array): number {
  let dropped = 0;
  for (let i = 0; i < stamps.length; i++)
    if (Math.abs(stamps[i] as number) > latest_s) {
      stamps[i] = Number.NaN;
      dropped++;
    }
  return dropped;
}

function mainKind(input: TimeInput, index: number): Cell['kind'] {
  const counts = input.kinds[index];
  // Rows of plain numbers are not counted.
  let best: Cell['kind'] = 'number';
  let most = 0;
  let counted = 0;
  for (const [kind, n] of counts ?? []) {
    counted += n;
    if (n > most) {
      most = n;
      best = kind;
    }
  }
  const rows = input.columns[index]?.values.length ?? 0;
  return counted > 0.5 * rows ? best : 'number';
}

/** Columns whose words or whose cells say time. A column that mostly goes backwards is none, whatever its name. */
function namedTimes(input: TimeInput): Candidate[] {
  const found: Candidate[] = [];
  input.meanings.forEach((meaning, index) => {
    const column = input.columns[index];
    if (!column || column.spread.count === 0) return;
    const kind = mainKind(input, index);
    const isClock = kind === 'clock' || kind === 'stamp';
    if (meaning.quantity !== 'time' && !isClock) return;
    const { code } = meaning.reason;
    const byHand = code === 'log/column-by-hand' || code === 'log/column-by-profile';
    const steady = forwardShare(column.values);
    if (!byHand && steady < 0.8) return;
    const base = meaning.quantity === 'time' ? meaning.confidence : 0.7;
    // Where a log holds both, its own stop watch has the finer steps.
    const trust = byHand
      ? 1
      : Math.min(0.99, base * (0.5 + 0.5 * steady)) -
        (isClock ? 0.02 : 0) -
        (usualStep(column.values) > 0 ? 0 : 0.5);
    found.push({ index, trust, reason: meaning.reason });
  });
  return found;
}

/** Unknown columns that rise row by row in even steps, the first of them most likely. */
function steadyClocks(input: TimeInput): Candidate[] {
  const found: Candidate[] = [];
  input.meanings.forEach((meaning, index) => {
    const column = input.columns[index];
    if (!column || meaning.quantity !== null) return;
    const step = usualStep(column.values);
    if (!(step > 0) || forwardShare(column.values) < 0.999 || column.values.length < 10) return;
    let even = 0;
    let all = 0;
    for (let i = 1; i < column.values.length; i++) {
      const d = (column.values[i] ?? 0) - (column.values[i - 1] ?? 0);
      all++;
      if (d > 0.5 * step && d < 1.5 * step) even++;
    }
    // Steps of exactly one are a row number as likely as seconds.
    if (even < 0.9 * all || step === 1) return;
    found.push({
      index,
      trust: index === 0 ? 0.5 : 0.35,
      reason: { code: 'log/column-steady-clock', facts: { step_s: step } },
    });
  });
  return found;
}

/** Seconds since midnight of the first day, as the stamp's own clock shows it. */
function toTimeOfDay(stamps: Float64Array): void {
  const first = stamps.find((t) => !Number.isNaN(t)) ?? 0;
  const midnight = Math.floor(first / 86_400) * 86_400;
  // A double holds seconds since 1970 to a quarter of a microsecond: what is finer is noise.
  for (let i = 0; i < stamps.length; i++)
    stamps[i] = Math.round(((stamps[i] ?? Number.NaN) - midnight) * 1e6) / 1e6;
}

/** `Sample rate: 20 Hz`, `Abtastrate 50 Hz`, `Frecuencia de muestreo;10 Hz`, `Sample interval: 50 ms`. */
function statedRate(preamble: string): number | null {
  const m =
    /(?:sampl|rate|logg|record|aufzeichn|registr|abtast|frequen|frecuen|fr[eé]quen|muestreo|echantillon|échantillon)[^\n\d]{0,40}(\d+(?:[.,]\d+)?)\s*(?:hz|\/s|samples)/i.exec(
      preamble,
    );
  const number = (text: string | undefined) => Number(text?.replace(',', '.') ?? Number.NaN);
  const every =
    /(?:sampl|abtast|log|muestreo|echantillon|échantillon|campion|meet|pr[oó]bkow)[^\n\d]{0,20}(?:interval|period|period[eo]|schritt|step|takt|time|zeit|okres)[^\n\d]{0,20}(\d+(?:[.,]\d+)?)\s*(ms|s)\b/i.exec(
      preamble,
    );
  const rate = m ? number(m[1]) : (every?.[2]?.toLowerCase() === 'ms' ? 1000 : 1) / number(every?.[1]);
  return rate > 0 && rate <= 100_000 ? rate : null;
}

/** `Sample (20 Hz)`: the rate stands in the name of the row number. */
function rateOfRowNumber({ columns, meanings }: TimeInput): number | null {
  const number = columns[meanings.findIndex((m) => m.quantity === 'sample')];
  return number ? statedRate(number.name) : null;
}

function fromRate(input: TimeInput, rate: number): FoundTime {
  const rows = input.columns[0]?.values.length ?? 0;
  const at = input.meanings.findIndex((m) => m.quantity === 'sample');
  const numbers = input.columns[at]?.values;
  const time = new Float64Array(rows);
  for (let i = 0; i < rows; i++) time[i] = (numbers ? (numbers[i] ?? Number.NaN) : i) / rate;
  // Row numbers that count nothing leave the rows themselves.
  if (droppedBeyond(time) > 0 && Number.isNaN(usualStep(time)))
    for (let i = 0; i < rows; i++) time[i] = i / rate;
  const axis = timeAxis(time, false);
  return {
    axis,
    column: null,
    unit: 's',
    format: 'sample-rate',
    confidence: 1,
    reason: { code: 'log/time-from-rate', facts: { rate_Hz: rate } },
    warnings: [{ code: 'log/time-from-rate', facts: { rate_Hz: rate } }, ...axis.warnings],
  };
}
