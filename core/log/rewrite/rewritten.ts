import type { Problem } from '../../result/index.ts';
import { decodeText, findEncoding } from '../table/encoding.ts';
import { encodingByWords } from '../table/encoding-by-words.ts';
import { headSize } from '../table/settle-table.ts';
import { rowsOfJson } from './json-rows.ts';
import { rowsSetUpright } from './turned-rows.ts';
import { rowsOfValues } from './values-gathered.ts';
import { rowsOfWebPage } from './web-table.ts';

// Neither DOM nor Node types exist here, but every host of ours has this class.
declare class TextEncoder {
  encode(text: string): Uint8Array;
}

/** What else a log is written as, a table for all that. */
export type OtherForm = 'web-page' | 'json' | 'on-its-side' | 'value-per-row';

const rowsOf: Readonly<Record<OtherForm, (text: string) => string[][]>> = {
  'web-page': rowsOfWebPage,
  json: rowsOfJson,
  'on-its-side': rowsSetUpright,
  'value-per-row': rowsOfValues,
};

/** Fewer rows are a list in a page or a settings file rather than a log (common practice). */
const fewestRows = 10;

/** The form that a file was refused for, or null where nothing can be made of it. */
export function otherFormOf(problem: Problem): OtherForm | null {
  if (problem.code === 'log/on-its-side') return 'on-its-side';
  if (problem.code === 'log/value-per-row') return 'value-per-row';
  if (problem.code !== 'log/not-a-table') return null;
  const { found } = problem.facts;
  return found === 'web-page' || found === 'json' ? found : null;
}

/**
 * A log in another form as a plain table with a row per sample: UTF-8, tabs between the cells, numbers spelled as in
 * the file. Null where it holds no table.
 *
 * @param bytes  the file, whole or its beginning
 */
export function rewritten(form: OtherForm, bytes: Uint8Array): Uint8Array | null {
  const { encoding, markLength } = findEncoding(bytes.subarray(0, headSize)) ?? {
    encoding: encodingByWords(bytes.subarray(0, headSize)),
    markLength: 0,
  };
  const rows = rowsOf[form](decodeText(bytes.subarray(markLength), encoding));
  if (rows.length <= fewestRows) return null;
  const lines = rows.map((row) => row.map((cell) => cell.replace(/["\t\r\n]/g, ' ')).join('\t'));
  return new TextEncoder().encode(`${lines.join('\n')}\n`);
}
