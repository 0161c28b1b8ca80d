/// <reference path="./papaparse.d.ts" />
import papaparse from 'papaparse';
import { type BlankField, cellsInFields } from './blank-fields.ts';

/** A character that no log holds: tells papaparse that nothing is quoted. */
const noQuote = '\u0001';

/**
 * Text to rows of cells. Line ends may be mixed; with a space as delimiter any run of blanks parts two cells.
 *
 * @param text       whole rows, in the file's own spelling
 * @param delimiter  one character
 * @param isQuoted   false where a stray quote would swallow the rest of the file
 * @param fields     columns lined up by blanks: a row with fewer cells is parted by where they stand
 */
export function tokenise(
  text: string,
  delimiter: string,
  isQuoted = true,
  fields: readonly BlankField[] | null = null,
): string[][] {
  // papaparse splits at one kind of line end only.
  let lines = text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text;
  if (fields) return lines.split('\n').map((line) => partedByBlanks(line, fields));
  if (delimiter === ' ') lines = lines.replace(/[ \t]+/g, ' ').replace(/^ | $/gm, '');
  // papaparse knows a quote only at the very edge of a cell: `"1", "2"` would keep its quotes.
  else if (isQuoted && lines.includes('"')) lines = withoutBlanksAtQuotes(asQuoted(lines), delimiter);
  return papaparse.parse(lines, {
    delimiter,
    newline: '\n',
    quoteChar: isQuoted ? '"' : noQuote,
    skipEmptyLines: false,
  }).data;
}

function partedByBlanks(line: string, fields: readonly BlankField[]): string[] {
  const cells = line.trim().split(/[ \t]+/);
  return cells.length < fields.length ? (cellsInFields(line, fields) ?? cells) : cells;
}

/** Spreadsheets are told by `="12.5"` to take a cell as text: the quotes are those of a cell all the same. */
function asQuoted(lines: string): string {
  return lines.includes('="') ? lines.replace(/="([^"\n]*)"/g, '"$1"') : lines;
}

function withoutBlanksAtQuotes(lines: string, delimiter: string): string {
  const mark = delimiter.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const blank = delimiter === '\t' ? ' *' : '[ \\t]*';
  return lines.replace(new RegExp(`"${blank}${mark}${blank}"`, 'g'), `"${delimiter}"`);
}
