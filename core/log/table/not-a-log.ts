/** What a file can be when it is no table of numbers. */
export type OtherFile =
  | 'image'
  | 'archive'
  | 'workbook'
  | 'document'
  | 'program'
  | 'media'
  | 'database'
  | 'web-page'
  | 'json'
  | 'xml'
  | 'binary';

/** First bytes of common files, from the published formats (PNG, JFIF, GIF, TIFF, PDF, ZIP, gzip and so on). */
const signatures: readonly (readonly [OtherFile, string | readonly number[]])[] = [
  ['image', [0x89, 0x50, 0x4e, 0x47]],
  ['image', [0xff, 0xd8, 0xff]],
  ['image', 'GIF8'],
  ['image', 'II*\0'],
  ['image', 'MM\0*'],
  ['archive', 'PK\u0003\u0004'],
  ['archive', 'PK\u0005\u0006'],
  ['archive', [0x1f, 0x8b]],
  ['archive', [0x37, 0x7a, 0xbc, 0xaf, 0x27, 0x1c]],
  ['archive', 'Rar!'],
  ['archive', [0xfd, 0x37, 0x7a, 0x58, 0x5a]],
  ['archive', [0x28, 0xb5, 0x2f, 0xfd]],
  ['document', '%PDF'],
  ['document', [0xd0, 0xcf, 0x11, 0xe0]],
  ['document', '{\\rtf'],
  ['program', [0x7f, 0x45, 0x4c, 0x46]],
  ['program', 'MZ\u0090'],
  ['media', 'RIFF'],
  ['media', 'OggS'],
  ['media', 'ID3'],
  ['database', 'SQLite format 3'],
];

/** What the file's first bytes say it is, or null where it may be a log. */
export function otherFileOf(head: Uint8Array): OtherFile | null {
  for (const [kind, mark] of signatures) {
    const bytes = typeof mark === 'string' ? [...mark].map((c) => c.charCodeAt(0)) : mark;
    if (head.length >= bytes.length && bytes.every((b, i) => head[i] === b))
      return kind === 'archive' && isWorkbook(head) ? 'workbook' : kind;
  }
  // 'ftyp' of the ISO base media file format stands behind the box length.
  if (String.fromCharCode(...head.subarray(4, 8)) === 'ftyp') return 'media';
  return hasControlBytes(head) ? 'binary' : null;
}

/** Spreadsheets of both open standards are archives whose first files have these names (ISO/IEC 29500, 26300). */
function isWorkbook(head: Uint8Array): boolean {
  const start = String.fromCharCode(...head.subarray(0, 4096));
  return /\[Content_Types\]\.xml|_rels\/|xl\/|mimetypeapplication\/vnd\.oasis\.opendocument/.test(start);
}

/** The same for a text: markup and data languages. */
export function otherTextOf(text: string): OtherFile | null {
  const start = text.slice(0, 2000).trimStart();
  if (/^<(!doctype html|html|head|body|table|meta|!--[\s\S]*?<html)/i.test(start)) return 'web-page';
  if (/^<\?xml|^<[a-z_][\w:.-]*(\s[^<>]*)?\/?>/i.test(start))
    return /<html/i.test(start) ? 'web-page' : 'xml';
  if (/^\{\s*("|\}|$)/.test(start) || /^\[\s*([{["\]]|-?\d[\d.]*\s*,|$)/.test(start))
    return isJson(text, start);
  return null;
}

/** `[1, 2, 3]` and `{"a": 1}` are; a bracket that opens a preamble, as in `[Run 3]`, is not. */
function isJson(text: string, start: string): OtherFile | null {
  if (/^[[{]\s*[[{"]/.test(start)) return 'json';
  return text.length < 2000 && /[\]}]\s*$/.test(text) ? 'json' : null;
}

/** Bytes that no text holds. Zero is told apart, since a damaged log may hold zeros. */
function hasControlBytes(head: Uint8Array): boolean {
  let control = 0;
  for (let i = 0; i < head.length; i++) {
    const b = head[i] as number;
    if (b < 32 && b !== 0 && !(b >= 8 && b <= 13) && b !== 27 && b !== 26) control++;
  }
  return control > Math.max(2, 0.02 * head.length);
}
