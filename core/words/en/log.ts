import { kindMeasuredIn, type OtherFile } from '../../log/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import { firstNames } from '../first-names.ts';
import { measuredIn } from '../measured-in.ts';
import type { Show } from '../show.ts';
import { quantityNames } from './quantities.ts';
import { derived } from './screens/derived.ts';

const otherFiles: Record<OtherFile, string> = {
  image: 'an image',
  archive: 'an archive',
  workbook: 'a spreadsheet’s own file',
  document: 'a document',
  program: 'a program',
  media: 'sound or video',
  database: 'a database',
  'web-page': 'a web page',
  json: 'JSON data',
  xml: 'XML data',
  binary: 'binary data',
};

const packedRemedies: Partial<Record<OtherFile, string>> = {
  archive: 'Unpack it and import the log that is in it.',
  workbook: 'Save the sheet with the log as a text table (CSV) in the spreadsheet program and import that.',
};

const encodingNames: Readonly<Record<string, string>> = {
  'windows-1250': 'Windows 1250 (Central Europe)',
  'iso-8859-2': 'ISO 8859-2 (Central Europe)',
  macintosh: 'Mac Roman',
  cp850: 'DOS code page 850',
  cp437: 'DOS code page 437',
  cp852: 'DOS code page 852 (Central Europe)',
  shift_jis: 'Shift_JIS (Japanese)',
};

const rewrittenFrom = {
  'web-page': 'The file is a web page; the table in it was read.',
  json: 'The file is JSON; the records in it were read as rows.',
  'value-per-row':
    'Each row of the file holds one value of one channel; values of one time were read as one row.',
  'on-its-side': 'The table lies on its side; it was read with rows and columns swapped.',
} as const;

const unitName = (unit: string, show: Show) =>
  unit === '' ? 'a plain number' : unit === '1' ? '0 … 1' : show.symbol(unit, 'number');

const missingField = {
  gearRatios: 'the list of gear ratios',
  finalDrive: 'the final drive',
  radius: 'the rolling radius or tyre size',
  gear: 'the gear of the pulls',
} as const;

export const logProblems: ProblemWordsOf<'log'> = {
  'log/formula-too-long': (f) => ({
    message: `The formula is ${f.length} characters long; ${f.most} are the most.`,
    remedy: 'Split it: a derived channel can use another one before it.',
  }),
  'log/formula-empty': () => ({
    message: 'There is no formula.',
    remedy: 'Write one as in a book: (boost + 100 kPa) / barometricPressure.',
  }),
  'log/formula-too-large': (f) => ({
    message: `The formula has more than ${f.parts} parts, or more than ${f.levels} of them inside each other.`,
    remedy: 'Split it: a derived channel can use another one before it.',
  }),
  'log/formula-unreadable': (f) => ({
    message:
      f.rest === ''
        ? 'The formula ends where something is still to come.'
        : `The formula can’t be read from character ${f.at} on: “${f.rest}”.`,
    remedy:
      'Write it as in a book, with a point in decimals: (boost + 100 kPa) * 1.5. Names with spaces or signs go by the short name that the list of names gives them.',
  }),
  'log/formula-refused': (f) => ({
    message: `“${f.part}” can’t stand in a formula.`,
    remedy:
      'Use + - * / ^, comparisons, test ? yes : no, and abs, sqrt, exp, log, log10, sin, cos, tan, floor, ceil, round, min, max, rate, smooth.',
  }),
  'log/formula-symbol-unknown': (f, show) => ({
    message: `This log has nothing named “${f.symbol}”.`,
    remedy: `Use a name from the list that stands with the formulas, or a unit. Temperatures stand in ${show.symbol('K', 'temperature')}.`,
  }),
  'log/formula-units': (f) => ({
    message:
      f.left === ''
        ? `The units don’t fit: ${f.detail}.`
        : `The units don’t fit at “${f.detail}”: ${measuredIn(f.left, derived.kinds)} ≠ ${measuredIn(f.right, derived.kinds)}.`,
    remedy: 'Write the unit behind every number that has one: boost + 100 kPa.',
  }),
  'log/formula-window': () => ({
    message: 'The window of “smooth” is one fixed time above zero.',
    remedy: 'Write it as smooth(boost, 0.3 s).',
  }),
  'log/formula-result-units': (f) => ({
    message: `The formula gives “${measuredIn(f.found, derived.kinds)}”, but the channel is to be “${measuredIn(f.claimed, derived.kinds)}”.`,
    remedy:
      kindMeasuredIn(f.found) === null
        ? 'Bring it to a kind that can be chosen by a unit, such as * (1 s).'
        : 'Choose the kind that the formula gives, or mend the formula.',
  }),
  'log/empty': () => ({
    message: 'The file holds nothing.',
    remedy: 'Record the run again, or pick the file that the logger wrote.',
  }),
  'log/not-a-table': (f) => ({
    message: `The file is ${otherFiles[f.found]}, not a log.`,
    remedy:
      packedRemedies[f.found] ?? 'Export the run as a text table (CSV) from the logger and import that.',
  }),
  'log/null-bytes': () => ({
    message: 'The file holds zero bytes: it is damaged or no text.',
    remedy: 'Copy it from the logger once more, or export it again as a text table.',
  }),
  'log/line-too-long': (f) => ({
    message: `One line is longer than ${Math.round(f.limit / 1024)} kB, which no row of a log is.`,
    remedy: 'Export the run again with one line per sample.',
  }),
  'log/only-text': (f) => ({
    message: `No row of numbers at the beginning of the file (lines read: ${f.linesRead}).`,
    remedy: 'Pick a file with one row per sample and numbers in its columns.',
  }),
  'log/value-per-row': (f) => ({
    message: `Each row holds one value of one channel (${f.channels} of them), and they can’t be brought together.`,
    remedy: 'Export the run as a table with one column per channel and one row per sample.',
  }),
  'log/on-its-side': (f) => ({
    message: `The table lies on its side: each row is a channel with its name in front (${f.channels}), and the samples stand along it (${f.samples}).`,
    remedy:
      'In a copy of the file, swap rows and columns: the names in one row at the top, one row per sample below.',
  }),
  'log/too-many-columns': (f) => ({
    message: `The table has ${f.columns} columns; the limit is ${f.limit}.`,
    remedy: 'Export fewer channels, or swap rows and columns if the file lies on its side.',
  }),
  'log/too-few-rows': (f) => ({
    message: `Rows of numbers in the table: ${f.rows}; at least ${f.needed} are needed.`,
    remedy: 'Record the run again, and check that the logger was still running.',
  }),
  'log/names-uneven': (f) => ({
    message: `${f.names} names stand over ${f.columns} columns of numbers, so it can't be told which belongs to which.`,
    remedy:
      'In a copy of the file, part names and numbers by semicolons or tabs, or write each name without blanks.',
  }),
  'log/comma-twice': (f) => ({
    message: `The comma parts the columns and is the decimal mark too: ${f.names} names stand over ${f.columns} columns.`,
    remedy: 'Write the log again with semicolons between the columns or with decimal points.',
  }),
  'log/no-time': (f) => ({
    message: `None of the columns holds the time: ${firstNames(f.columns, (n) => `${n} more`)}.`,
    remedy:
      'If one of them holds the time or counts the rows, set it to Time under Columns; a row number goes by the time from row to row, as 1/20 s. Else write the rate above the header in a copy of the file: Sample rate: 20 Hz.',
  }),
  'log/curve-without-time': (f) => ({
    message: `The table is a finished curve over “${f.column}”: no column holds the time, so no pull can be found in it.`,
    remedy: 'Export the samples of the run over time from the dyno and import those.',
  }),
  'log/time-stands-still': () => ({
    message: 'The time never moves on.',
    remedy:
      'Set another column to Time under Columns, a row number by the time from row to row, as 1/20 s; or in a copy of the file take that column out and write the rate above the header: Sample rate: 20 Hz.',
  }),
  'log/time-no-clock': (f, show) => ({
    message: `The time column holds ${show.reading(f.first)}, which no clock shows.`,
    remedy:
      'Choose another time column (Pulls, Columns), or in a copy of the file take that one out and write the rate above the header: Sample rate: 20 Hz.',
  }),
  'log/mapping-unit': (f) => ({
    message: `“${f.unit}” is no unit of this quantity: ${quantityNames[f.quantity]}.`,
    remedy: 'Choose a unit of that quantity, or leave the column without one.',
  }),
  'log/too-big': (f) => ({
    message: `More than ${f.rows} rows of ${f.columns} columns do not fit into memory.`,
    remedy: 'Cut the log into shorter runs, or export fewer channels.',
  }),
  'log/cancelled': () => ({
    message: 'Reading was cancelled.',
    remedy: 'Import the file again to read it.',
  }),
};

export const logNotes: NoteWordsOf<'log'> = {
  'log/column-by-formula': (f) => `By the formula ${f.formula}.`,
  'log/column-by-name': (f) => `The header says “${f.word}”.`,
  'log/column-by-name-unit': (f, show) =>
    `The header says “${f.word}”${f.unit === '' ? '' : `, in ${unitName(f.unit, show)}`}.`,
  'log/column-by-values': (f, show) =>
    `The header says “${f.word}”; values from ${show.reading(f.low)} to ${show.reading(f.high)} point to ${unitName(f.unit, show)}.`,
  'log/column-gauge-by-values': (f, show) =>
    `Called “${f.word}”; whether it is absolute or above the air was told from its values, ${show.quantity(f.low, 'pressure')} to ${show.quantity(f.high, 'pressure')}.`,
  'log/column-steady-clock': (f, show) =>
    `Not known by its name, but it runs on in even steps of ${show.number(f.step_s, 3)}.`,
  'log/column-by-hand': () => 'Set by hand.',
  'log/column-by-profile': () => 'As set by hand for an earlier log with the same columns.',
  'log/column-stands-still': () => 'It never changes while the engine does; kept as it stands.',
  'log/column-unknown': () => 'Not recognised; kept as it stands.',
  'log/encoding-by-words': (f) =>
    `The file does not say how its accented letters are written; they were read as ${encodingNames[f.encoding] ?? f.encoding}, in which most of its words are known.`,
  'log/columns-unnamed': (f) =>
    `The header at line ${f.line} has no name for the last columns: ${f.count} of ${f.columns}.`,
  'log/times-joined': (f) =>
    `The file has ${f.count} times, each for the columns behind it. All were brought to “${f.column}”, on straight lines between their readings.`,
  'log/rewritten': (f) => rewrittenFrom[f.form],
  'log/opening-turned': (f) =>
    `“${f.column}” falls while the manifold fills, so it was turned round: its lowest reading counts as fully open.`,
  'log/speed-unit-assumed': (f, show) =>
    `Nothing says which unit “${f.column}” has; it was taken for ${show.symbol(f.unit, 'speed')}. Set it by hand if that is wrong: power goes with its square.`,
  'log/speed-unit-by-gears': (f, show) =>
    `Nothing says which unit “${f.column}” has; engine speed, gears and tyre of the car fit ${show.symbol(f.unit, 'speed')} alone, so that was taken. A unit set by hand goes first.`,
  'log/speed-unit-by-engine': (f, show) =>
    `Nothing says which unit “${f.column}” has; in any other than ${show.symbol(f.unit, 'speed')} the engine would turn faster for the road speed than a car’s lowest gear lets it. Check it: power goes with its square.`,
  'log/rows-far-apart': (f, show) =>
    `A row comes only every ${show.quantity(f.step_s, 'time', 2)}: too slow for the ends of pulls and for power. If the column counts rows or another unit, set it by hand.`,
  'log/rows-skipped': (f) =>
    `Rows without usable numbers, left out: ${f.count}, the first at line ${f.firstLine}.`,
  'log/rows-wide': (f) =>
    `Rows with more numbers than the table has columns (${f.columns}), left out: ${f.count}, the first at line ${f.firstLine}.${f.isCommaParted ? ' Commas within numbers do that: write the log again with semicolons between the columns or with decimal points.' : ''}`,
  'log/zero-rows': (f) =>
    `Rows with zero bytes, as after a power cut, left out: ${f.count}, the first at line ${f.firstLine}.`,
  'log/header-repeated': (f) => `The header comes back at line ${f.firstLine}; times in all: ${f.count}.`,
  'log/other-table': (f) =>
    `A table with other columns begins at line ${f.line}; only the one above it was read.`,
  'log/last-row-cut': (f) => `The last row, line ${f.line}, is cut short and was left out.`,
  'log/foot-left-out': (f) =>
    `Rows without a time at the end, as of lowest and highest values, were left out: ${f.count}.`,
  'log/newest-first': () => 'The newest row stands first; the rows were turned round.',
  'log/padded-tail': (f) =>
    `Zero bytes at the end of the file, as after a power cut, were left out: ${f.bytes}.`,
  'log/time-repaired': (f, show) =>
    `Time stamps missing or out of order: ${f.count}, the first near ${show.number(f.first_s, 2)} s; set between their neighbours.`,
  'log/stamps-spread': (f) => `Rows with the time stamp of the row before: ${f.count}; spread evenly.`,
  'log/clock-reset': (f, show) =>
    `The clock starts anew, from ${show.number(f.at_s, 2)} s to ${show.number(f.to_s, 2)} s; times in all: ${f.count}.`,
  'log/gap': (f, show) =>
    `Gaps in the recording: ${f.count}, the first after ${show.number(f.at_s, 2)} s; the longest lasts ${show.number(f.longest_s, 2)} s.`,
  'log/time-from-rate': (f, show) =>
    `Time was counted from the rows at ${show.number(f.rate_Hz, 1)} per second.`,
  'log/profile-used': (f) =>
    f.count === 1
      ? '1 column is read as it was corrected in an earlier log with the same columns.'
      : `${f.count} columns are read as they were corrected in an earlier log with the same columns.`,
  'log/mapping-unused': (f) => `The mapping names a column “${f.column}” that the file does not have.`,
  'log/pulls-by': (f) =>
    `Neither pedal nor throttle tells; pulls were found by this channel: ${quantityNames[f.quantity]}.`,
  'log/no-pulls': () => 'No full-throttle pull was found.',
  'log/no-engine-speed': () =>
    'Neither engine speed nor a vehicle speed that moves is in this log, so no pulls can be found. Log engine speed, or map the column that holds it.',
  'log/speed-alone': (f) =>
    `Of what tells a pull only “${f.column}” is in this log, and speed alone does not tell full throttle from a gentle push in a lower gear. Log engine speed, pedal, throttle or boost, or mark the pulls by hand.`,
  'log/engine-speed-computed': (f) =>
    f.gearFrom === 'log'
      ? `Engine speed is computed, not logged: from “${f.column}” through the logged gear.`
      : `Engine speed is computed, not logged: from “${f.column}” and the gear that the car names for its pulls. If most pulls were driven in another gear, engine speed and engine power are wrong; wheel power stays.`,
  'log/engine-speed-open': (f) =>
    `Engine speed is not logged. Pulls were found by “${f.column}”, but there is no power over engine speed: ${missingField[f.missing]} is missing. Enter it in the car, or log engine speed too.`,
  'log/pull-gear-unsettled': () =>
    'Its gear can’t be told: engine speed is not logged, and the force fits no gear, or several, beside the other pulls.',
  'log/pull-aborted': (f, show) =>
    `Ended early${f.rpmTo_rad_s === null ? '' : `, at ${show.quantity(f.rpmTo_rad_s, 'engineSpeed')}`}, before it covered a usable span.`,
  'log/pull-gear-change': (f, show) => `Ends or begins with a gear change at ${show.number(f.time_s, 2)} s.`,
  'log/pull-wheel-spin': (f, show) => {
    const ahead =
      f.excess === null ? '' : `: engine speed runs ${show.number(100 * f.excess, 0)} % ahead of the road`;
    return `Wheels spin or the clutch slips at ${show.number(f.time_s, 2)} s${ahead}.`;
  },
  'log/pull-limiter': (f, show) => `On the limiter at ${show.quantity(f.engineSpeed_rad_s, 'engineSpeed')}.`,
  'log/pull-intervention': (f, show) =>
    `Torque was taken back at ${show.number(f.time_s, 2)} s while the pedal stayed down.`,
  'log/pull-knock': (f, show) =>
    `Spark was retarded for knock by ${show.quantity(f.retard_rad, 'angle')} at ${show.number(f.time_s, 2)} s.`,
  'log/pull-gap': (f, show) =>
    `Rows are missing for ${show.number(f.missing_s, 2)} s from ${show.number(f.time_s, 2)} s; speed goes on as it would at full throttle.`,
  'log/pull-no-start': () => 'The recording begins after full throttle did.',
  'log/pull-no-end': () => 'The recording ends before the lift.',
  'log/pull-start-uncertain': (f, show) =>
    `Start uncertain within ±${show.number(f.within_s, 2)} s: no pedal tells it. Look and trim.`,
  'log/pull-end-uncertain': (f, show) =>
    `End uncertain within ±${show.number(f.within_s, 2)} s: no pedal tells it. Look and trim.`,
};
