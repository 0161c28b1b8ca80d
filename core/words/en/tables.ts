import type { TableAxis, TableKind } from '../../tables/index.ts';
import { unitOf } from '../../units/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import type { Show } from '../show.ts';

const axes: Record<TableAxis, string> = { across: 'across the top', down: 'down the left' };

const kinds: Record<TableKind, string> = { spark: 'Spark', boost: 'Boost', lambda: 'A mixture target' };
/** Cells keep the digits they have; a unit follows where it has a name. */
const cell = (value: number, unit: string, show: Show) => {
  const { symbol } = unitOf(unit);
  const digits = `${value}`.split('.')[1]?.length ?? 0;
  return symbol === '°' ? `${show.number(value, digits)}°` : `${show.number(value, digits)}\u00a0${symbol}`;
};

export const tablesProblems: ProblemWordsOf<'tables'> = {
  'tables/empty': () => ({
    message: 'There is nothing to read.',
    remedy: 'Copy the whole table with both axes in the ECU’s editor, and paste it here.',
  }),
  'tables/no-grid': (f) => ({
    message: `In ${f.rows} lines there is no table: an axis across the top and one down the left are needed.`,
    remedy: 'Copy the axes along with the numbers.',
  }),
  'tables/row-length': (f) => ({
    message: `This line has ${f.cells} cells, the axis above has ${f.expected}.`,
    remedy: 'Copy the table as a whole, or mend the line.',
  }),
  'tables/axis-not-rising': (f, show) => ({
    message: `On the axis ${axes[f.axis]} ${show.number(f.value, 2)} follows ${show.number(f.previous, 2)}: an axis climbs or falls all the way.`,
    remedy: 'Check that the axis was copied, and not a row of the table.',
  }),
  'tables/cell-not-number': (f) => ({
    message: f.text === '' ? 'This cell is empty.' : `“${f.text}” is not a number.`,
    remedy: 'Fill the cell in the ECU’s editor and copy again.',
  }),
  'tables/shape-differs': (f) => ({
    message: `${f.rows} rows by ${f.columns} columns can’t be laid over ${f.otherRows} by ${f.otherColumns}.`,
    remedy: 'Compare two versions of one table.',
  }),
  'tables/axes-differ': (f, show) => ({
    message: `On the axis ${axes[f.axis]} ${show.number(f.value, 2)} stands against ${show.number(f.other, 2)}.`,
    remedy: 'Compare two versions of one table, with the same axes.',
  }),
  'tables/step-not-number': () => ({
    message: 'The step is missing, or nothing.',
    remedy: 'Enter the step in the unit of the table.',
  }),
  'tables/no-limit': (f) => ({
    message:
      f.kind === 'spark'
        ? 'There is no limit for the spark of this table yet.'
        : f.kind === 'boost'
          ? 'There is no limit for boost yet.'
          : 'There is no leanest mixture yet.',
    remedy: 'Enter the most that any of these cells may get; you know this engine, the program does not.',
  }),
  'tables/past-limit': (f, show) => ({
    message: `${cell(f.value, f.unit, show)} is past your limit of ${cell(f.limit, f.unit, show)}.`,
    remedy: 'Enter less, or set another limit first.',
  }),
  'tables/cell-not-plausible': (f, show) => ({
    message: `${kinds[f.kind]} of ${cell(f.value, f.unit, show)} can’t be: an engine runs between ${cell(f.lowest, f.unit, show)} and ${cell(f.highest, f.unit, show)}.`,
    remedy: 'Check the decimal point, the kind and the unit of the table.',
  }),
  'tables/cell-dangerous': (f, show) => ({
    message: `${kinds[f.kind]} of ${cell(f.value, f.unit, show)} at ${show.quantity(f.boost, 'boost')} of boost breaks an engine: nothing past ${cell(f.highest, f.unit, show)} is read.`,
    remedy: 'Check the cell in the ECU’s editor, and the kind and the load axis here.',
  }),
  'tables/no-engine-speed': (f, show) => ({
    message: `The axis chosen for engine speed ends at ${show.number(f.highest, f.highest < 100 ? 1 : 0)}\u00a0${show.symbol('rpm', 'engineSpeed')}.`,
    remedy: 'Choose the other axis, or copy it again without signs between the thousands.',
  }),
  'tables/load-not-plausible': (f, show) => ({
    message: `The load axis ends at ${cell(Number(f.highest.toPrecision(6)), f.unit, show)}: no engine gets there.`,
    remedy: 'Choose what the load axis counts in.',
  }),
};

export const tablesNotes: NoteWordsOf<'tables'> = {
  'tables/stepped': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'cell' : 'cells'} stepped, the largest by ${show.number(f.largest, 2)}.`,
  'tables/held-by-limit': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'cell was' : 'cells were'} held at your limit of ${show.number(f.limit, 2)}.`,
  'tables/held-by-neighbours': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'cell was' : 'cells were'} held back by ${f.cells === 1 ? 'its' : 'their'} neighbours: ${f.limit === null ? '' : `no more than ${show.number(f.limit, 2)} apart, and `}no more than one step of ${show.number(f.step, 2)} further apart than when the table was last written down.`,
  'tables/fluid-was-short': (f) =>
    `${f.cells} ${f.cells === 1 ? 'cell' : 'cells'} should get fluid by the curve, but the logged flow was short there: left alone.`,
  'tables/nothing-covered': () =>
    'The spray covers no cell that was driven: nothing is stepped. A cell without fluid must not get its spark.',
  'tables/nothing-changed': () => 'No cell changed: limits and neighbours leave no room for this step.',
  'tables/step-too-fine': (f, show) =>
    `No cell changed: the step is finer than the table’s digits, which go by ${show.number(f.digit, f.decimals)}. Step by ${show.number(f.least, f.decimals)} or more.`,
  'tables/covered-not-driven': (f) =>
    `${f.cells} ${f.cells === 1 ? 'cell gets' : 'cells get'} fluid but no pull has been there: left alone.`,
  'tables/check-before-writing': () =>
    'Look at the difference before it goes into the ECU: a wrong cell under boost destroys an engine in seconds. Keep the old table.',
};
