import { describe, expect, it } from 'vitest';
import {
  type EcuTable,
  maskOf,
  readTable,
  type StepQuestion,
  stepCells,
} from '../../../core/tables/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, noteText, screenWords } from '../../../core/words/index.ts';
import { remarksOfNudge } from '../../../renderer/tables/held-remarks.ts';

const axes = { engineSpeed: 'across', load: { kind: 'absolute', unit: 'kPa' } } as const;

function table(): EcuTable {
  const read = readTable('kPa\\rpm\t2000\t3000\t4000\n100\t20.0\t20.0\t20.0\n160\t20.0\t20.0\t20.0\n');
  if (!read.ok) throw new Error('the table is not read');
  return read.value;
}

/** What is told of a step of some cells, each `row,column`. */
function told(cells: readonly string[], more: Partial<StepQuestion>, language: 'en' | 'de' = 'en') {
  const now = table();
  const covered = maskOf(now, (r, c) => cells.includes(`${r},${c}`));
  const stepped = stepCells(now, { covered, step: 1, edge: 0, limit: null, neighbourLimit: null, ...more });
  if (!stepped.ok) throw new Error('nothing was stepped');
  const show = createShow(language, metricUnits);
  return remarksOfNudge(
    stepped.value,
    { table: { axes }, now },
    {
      show,
      note: (n) => noteText(n, show),
      screens: screenWords(language),
    },
  );
}

describe('what is told of a step by keys', () => {
  it('is nothing where every cell moved as asked', () => {
    expect(told(['0,0'], { limit: 25 })).toEqual([]);
  });

  it('is the cell and its neighbours where they hold it', () => {
    expect(told(['1,2'], { neighbourLimit: 0.4 })).toEqual([
      expect.stringMatching(/^Held by its neighbours: 4,000\srpm 160\skPa\sabs$/),
    ]);
  });

  it('is the limit where that holds it, in the language of the reader', () => {
    expect(told(['0,0'], { limit: 20 })).toEqual([
      expect.stringMatching(/^Held at your limit: 2,000\srpm 100\skPa\sabs$/),
    ]);
    expect(told(['0,0'], { limit: 20 }, 'de')).toEqual([
      expect.stringMatching(/^An der eigenen Grenze gehalten: 2\.000\s\S+ 100\skPa\sabs$/),
    ]);
  });

  it('names two cells and counts the others, so that it stays a line', () => {
    const all = ['0,0', '0,1', '0,2', '1,0', '1,1', '1,2'];
    expect(told(all, { limit: 20 })).toEqual([
      expect.stringMatching(
        /^Held at your limit: 2,000\srpm 100\skPa\sabs; 3,000\srpm 100\skPa\sabs and 4 more$/,
      ),
    ]);
  });

  it('says so where a step is finer than the digits of the cells', () => {
    expect(told(['0,0'], { step: 0.01 })).toEqual([
      'No cell changed: the step is finer than the table’s digits, which go by 0.1. Step by 0.1 or more.',
    ]);
    expect(told(['0,0'], { step: 0.05 }, 'de')).toEqual([expect.stringContaining('um 0,1 springen')]);
  });

  it('names the step that moves a cell where the edge leaves half of it', () => {
    expect(told(['0,0'], { step: 0.1, edge: 1 })).toEqual([expect.stringMatching(/Step by 0\.2 or more\.$/)]);
    expect(told(['0,0'], { step: 0.2, edge: 1 })).toEqual([]);
  });
});
