import type { TableAxis } from '../../tables/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

const axes: Record<TableAxis, string> = { across: 'across the top', down: 'down the left' };

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
};

export const tablesNotes: NoteWordsOf<'tables'> = {
  'tables/stepped': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'cell' : 'cells'} stepped, the largest by ${show.number(f.largest, 2)}.`,
  'tables/held-by-limit': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'cell was' : 'cells were'} held at your limit of ${show.number(f.limit, 2)}.`,
  'tables/held-by-neighbours': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'cell was' : 'cells were'} held back: no more than ${show.number(f.limit, 2)} from a neighbour.`,
  'tables/nothing-covered': () =>
    'The spray covers no cell that was driven: nothing is stepped. A cell without fluid must not get its spark.',
  'tables/nothing-changed': () => 'No cell changed: limits and neighbours leave no room for this step.',
  'tables/covered-not-driven': (f) =>
    `${f.cells} ${f.cells === 1 ? 'cell gets' : 'cells get'} fluid but no pull has been there: left alone.`,
  'tables/check-before-writing': () =>
    'Look at the difference before it goes into the ECU: a wrong cell under boost destroys an engine in seconds. Keep the old table.',
};
