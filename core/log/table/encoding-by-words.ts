import { headerParts } from '../columns/header-unit.ts';
import { matchName } from '../columns/name-match.ts';
import { parseUnit } from '../columns/unit-words.ts';
import { readCell } from './cell.ts';
import { decodeText, type Encoding } from './encoding.ts';

/**
 * Encodings that loggers and old spreadsheets write, the usual ones first. Shift_JIS alone takes two bytes for a
 * character; letters do not speak for it, only words that are known, so that nobody's accents are taken for its signs.
 */
const candidates = [
  'windows-1252',
  'windows-1250',
  'iso-8859-2',
  'macintosh',
  'cp850',
  'cp437',
  'cp852',
  'shift_jis',
] as const satisfies readonly Encoding[];

/** Names and units stand at the top; units glued to numbers in every row. */
const mostLines = 80;
const mostBytes = 65_536;
/** Letters and signs of the languages that column names are known in. */
const usualLetters = /^[äöüßéèêëàâçôîïûñáíóúìòùąćęłńóśźż°ºµμ²³·λ\u00a0]*$/iu;
/** No header holds these: lines of boxes, blocks, controls, and bytes that mean nothing. */
const noLetters = /[\u0080-\u009f\u2500-\u259f\ufffd]/u;
/** Letters of a name weigh little beside a word that is known. */
const letterWeight = 0.2;
/** So much more must speak for another encoding than for the one before it. */
const leastGain = 0.05;

/**
 * Encoding of a text that is no UTF: the one in which names, units and numbers with letters beyond ASCII are known
 * best; the usual windows-1252 where nothing speaks against it.
 *
 * @param head  the first bytes of the file
 */
export function encodingByWords(head: Uint8Array): Encoding {
  const lines = linesBeyondAscii(head);
  let best: Encoding = 'windows-1252';
  let most = Number.NEGATIVE_INFINITY;
  for (const encoding of candidates) {
    let score = 0;
    // A word that stands in every row says no more than one that stands there once.
    for (const cell of new Set(lines.flatMap((line) => cellsOf(decodeText(line, encoding)))))
      score += soundness(cell);
    if (score > most + leastGain) {
      best = encoding;
      most = score;
    }
  }
  return best;
}

/** The first lines that hold a byte beyond ASCII. */
function linesBeyondAscii(head: Uint8Array): Uint8Array[] {
  const lines: Uint8Array[] = [];
  const end = Math.min(head.length, mostBytes);
  let from = 0;
  let isBeyond = false;
  for (let i = 0; i <= end && lines.length < mostLines; i++) {
    const byte = i < end ? (head[i] as number) : 10;
    if (byte >= 0x80) isBeyond = true;
    if (byte !== 10 && byte !== 13) continue;
    if (isBeyond) lines.push(head.subarray(from, i));
    from = i + 1;
    isBeyond = false;
  }
  return lines;
}

function cellsOf(line: string): string[] {
  return line.split(/[;,\t|"]/).filter((cell) => hasBeyondAscii(cell));
}

function hasBeyondAscii(text: string): boolean {
  for (let i = 0; i < text.length; i++) if (text.charCodeAt(i) > 0x7f) return true;
  return false;
}

/** What speaks for a cell's reading: a unit or a number that is known, words that explain the name, usual letters. */
function soundness(cell: string): number {
  if (noLetters.test(cell)) return -1;
  const beyond = [...cell].filter((c) => c > '\u007f').join('');
  const letters = usualLetters.test(beyond) ? letterWeight : 0;
  const read = readCell(cell, '.');
  if (read.kind === 'number') return letters + (read.unit === '' || parseUnit(read.unit) !== null ? 1 : 0);
  if (parseUnit(cell) !== null) return letters + 1;
  const { name, unitText, unit } = headerParts(cell);
  const isUnitSaid = hasBeyondAscii(unitText) && unit !== null;
  return letters + (isUnitSaid ? 1 : 0) + (hasBeyondAscii(name) ? (matchName(name)[0]?.trust ?? 0) : 0);
}
