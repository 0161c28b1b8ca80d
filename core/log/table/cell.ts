import { sampleFlag } from '../channel.ts';
import { clockSeconds, stampSeconds } from './clock.ts';

export type Decimal = '.' | ',';

/** What one cell says. `unit` is the text glued to the number, '' where there is none. */
export type Cell = {
  readonly value: number;
  readonly flag: number;
  readonly kind:
    | 'number'
    | 'clock'
    | 'stamp'
    | 'position'
    | 'northSouth'
    | 'eastWest'
    | 'switch'
    | 'missing'
    | 'text';
  readonly unit: string;
};

const on = new Set(
  'on true yes på till active enabled open high ein an ja wahr aktiv offen si sí verdadero activo abierto encendido oui vrai actif ouvert marche vero acceso attivo aperto aan actief tak prawda wlaczony wlaczone wł włączony włączone'.split(
    ' ',
  ),
);
const off = new Set(
  'off false no av nej fran från inactive disabled closed low aus nein falsch inaktiv zu geschlossen falso inactivo cerrado apagado non faux inactif ferme fermé arret arrêt spento inattivo chiuso uit nee onwaar inactief nie falsz fałsz wylaczony wylaczone wył wyłączony wyłączone'.split(
    ' ',
  ),
);
const missing = new Set([
  '',
  '-',
  '--',
  '---',
  '.',
  '?',
  '*',
  'n/a',
  'na',
  '#n/a',
  'n.a.',
  'nan',
  '#nan',
  'null',
  'none',
  'nil',
  'k.a.',
  'kein',
  'keine',
  'inf',
  '-inf',
  '+inf',
  'infinity',
  '-infinity',
  'undefined',
  'invalid',
  'error',
  'err',
  'x',
]);

const missingCell: Cell = { value: Number.NaN, flag: sampleFlag.missing, kind: 'missing', unit: '' };
const textCell: Cell = { value: Number.NaN, flag: sampleFlag.text, kind: 'text', unit: '' };
const onCell: Cell = { value: 1, flag: 0, kind: 'switch', unit: '' };
const offCell: Cell = { value: 0, flag: 0, kind: 'switch', unit: '' };

const plain = {
  '.': /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?$/i,
  ',': /^[-+]?(?:\d+(?:,\d*)?|,\d+)(?:e[-+]?\d+)?$/i,
};
/** Digits in groups of three, parted by blank, apostrophe or the mark that is not the decimal one. */
const grouped = {
  '.': /^[-+]?\d{1,3}(?:([,'’ \u00a0\u202f\u2009])\d{3})(?:\1\d{3})*(?:\.\d*)?$/,
  ',': /^[-+]?\d{1,3}(?:([.'’ \u00a0\u202f\u2009])\d{3})(?:\1\d{3})*(?:,\d*)?$/,
};
/** A status word as controllers print it; its first digit alone would be a number with a unit behind it. */
const hex = /^0x[0-9a-f]{1,12}$/i;
const glued =
  /^([-+]?(?:\d{1,3}(?:['’ \u00a0\u202f\u2009]\d{3})+(?:[.,]\d*)?|[\d.,]+(?:e[-+]?\d+)?))\s*([a-zµμ°%λ"/][^\d;|\t][^;|\t]*|[a-zµμ°%λ"][a-z0-9/²³·^*]*|(?<=\s)1\/min)$/i;

/** No time, and no number with its unit, is written in more characters; a whole row may be looked at as one cell. */
const longestWord = 100;

/** The number of a text in the file's own spelling, NaN where it is none. Agrees with Number(text) for '.'. */
export function plainNumber(text: string, decimal: Decimal): number {
  const t = text.trim();
  if (plain[decimal].test(t)) return Number(decimal === ',' ? t.replace(',', '.') : t);
  if (grouped[decimal].test(t)) {
    const bare = t.replace(decimal === ',' ? /[.'’\s]/g : /[,'’\s]/g, '');
    return Number(decimal === ',' ? bare.replace(',', '.') : bare);
  }
  // A file with decimal commas may still hold single points, where its program did not write the number.
  if (plain['.'].test(t)) return Number(t);
  return Number.NaN;
}

/** Some programs quote with the other mark, `'12.5'`, which the tokeniser does not know. */
export function unquoted(text: string): string {
  return text.length > 2 && text.startsWith("'") && text.endsWith("'") ? text.slice(1, -1).trim() : text;
}

/** Reads one cell of any kind; never fails. */
export function readCell(text: string, decimal: Decimal): Cell {
  const t = unquoted(text.replace('\u2212', '-').trim());
  const number = plainNumber(t, decimal);
  if (!Number.isNaN(number))
    return Number.isFinite(number) ? { value: number, flag: 0, kind: 'number', unit: '' } : textCell;
  if (t.length > longestWord) return textCell;
  const lower = t.toLowerCase();
  if (missing.has(lower)) return missingCell;
  if (on.has(lower)) return onCell;
  if (off.has(lower)) return offCell;
  if (t.includes(':')) {
    const clock = clockSeconds(t);
    if (!Number.isNaN(clock)) return { value: clock, flag: 0, kind: 'clock', unit: '' };
  }
  if (t.length >= 14) {
    const stamp = stampSeconds(t);
    if (!Number.isNaN(stamp)) return { value: stamp, flag: 0, kind: 'stamp', unit: '' };
  }
  if (hex.test(t)) return { value: Number(t), flag: 0, kind: 'number', unit: '' };
  const parts = glued.exec(t);
  if (parts?.[1] !== undefined && parts[2] !== undefined && parts[2].length < 20) {
    // A position may be written with its hemisphere behind a comma, 5230.12345,N.
    const value = plainNumber(parts[1].replace(/,$/, ''), decimal);
    if (Number.isFinite(value)) return { value, flag: 0, kind: 'number', unit: parts[2].trim() };
  }
  return textCell;
}
