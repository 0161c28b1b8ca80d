import { cellsAt, names } from './invented-pull.ts';

export type Refused = {
  readonly what: string;
  readonly name: string;
  readonly content: string | Uint8Array;
  readonly code: string;
  readonly says: RegExp;
  readonly line?: number;
};

const head = names.join(',');
const rows = (count: number) => Array.from({ length: count }, (_, i) => cellsAt(i).join(',')).join('\n');

/** Files that somebody picks by mistake, or that a recorder left behind broken. */
export const refused: readonly Refused[] = [
  { what: 'an empty file', name: 'empty.csv', content: '', code: 'log/empty', says: /holds nothing/ },
  {
    what: 'blanks alone',
    name: 'blank.csv',
    content: ' \n\t\r\n\n',
    code: 'log/empty',
    says: /holds nothing/,
  },
  {
    what: 'a byte order mark alone',
    name: 'mark.csv',
    content: '\ufeff',
    code: 'log/empty',
    says: /holds nothing/,
  },
  {
    what: 'a header alone',
    name: 'header.csv',
    content: `${head}\n`,
    code: 'log/only-text',
    says: /No row of numbers/,
  },
  {
    what: 'a header and one row',
    name: 'one-row.csv',
    content: `${head}\n${rows(1)}\n`,
    code: 'log/too-few-rows',
    says: /at least/,
    line: 2,
  },
  {
    what: 'a letter',
    name: 'letter.csv',
    content: 'Dear customer,\nthe car is ready.\nKind regards\n',
    code: 'log/only-text',
    says: /No row of numbers/,
  },
  {
    what: 'a picture',
    name: 'picture.csv',
    content: Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]),
    code: 'log/not-a-table',
    says: /an image/,
  },
  {
    what: 'a packed file',
    name: 'log.zip',
    content: Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 0, 0, 8, 0]),
    code: 'log/not-a-table',
    says: /an archive/,
  },
  {
    what: 'a web page',
    name: 'page.csv',
    content: '<!doctype html><html><body>1,2,3</body></html>',
    code: 'log/not-a-table',
    says: /a web page/,
  },
  {
    what: 'random bytes',
    name: 'noise.csv',
    content: Uint8Array.from({ length: 4000 }, (_, i) => (i * i * 31 + i * 7) % 251),
    code: 'log/not-a-table',
    says: /binary/,
  },
  {
    what: 'more zeros than rows',
    name: 'holes.csv',
    content: `${head}\n${rows(30)}\n${'\0'.repeat(6000)}\n${rows(30)}\n`,
    code: 'log/null-bytes',
    says: /zero bytes/,
    line: 32,
  },
  {
    what: 'a workbook',
    name: 'log.xlsx',
    content: new TextEncoder().encode('PK\u0003\u0004\u0014\0\u0006\0[Content_Types].xml'),
    code: 'log/not-a-table',
    says: /spreadsheet/,
  },
  {
    what: 'a page with a small table',
    name: 'index.html',
    content: '<html><table><tr><th>Name</th><th>Size</th></tr><tr><td>1</td><td>2</td></tr></table></html>',
    code: 'log/not-a-table',
    says: /a web page/,
  },
  {
    what: 'settings in JSON',
    name: 'settings.json',
    content: '{"car": {"mass": 1400, "gears": [3.4, 2.1, 1.4]}, "units": "metric"}',
    code: 'log/not-a-table',
    says: /JSON/,
  },
  {
    what: 'a finished curve of a dyno',
    name: 'curve.csv',
    content: `Engine Speed (rpm),Power (kW)\n${Array.from({ length: 60 }, (_, i) => `${2000 + 50 * i},${40 + i}`).join('\n')}\n`,
    code: 'log/curve-without-time',
    says: /finished curve over “Engine Speed \(rpm\)”/,
    line: 1,
  },
  {
    what: 'one column',
    name: 'one-column.csv',
    content: `Engine Speed (rpm)\n${Array.from({ length: 60 }, (_, i) => 2000 + 7 * ((i * i) % 31)).join('\n')}\n`,
    code: 'log/no-time',
    says: /None of the columns holds the time: Engine Speed/,
    line: 1,
  },
  {
    what: 'no time',
    name: 'no-time.csv',
    content: `Engine Speed (rpm),Boost (kPa)\n${Array.from({ length: 60 }, (_, i) => `${2000 + 7 * ((i * i) % 31)},${(i * 13) % 50}`).join('\n')}\n`,
    code: 'log/no-time',
    says: /None of the columns holds the time: Engine Speed/,
    line: 1,
  },
  {
    what: 'a clock that stands',
    name: 'stands.csv',
    content: `${head}\n${Array.from({ length: 60 }, (_, i) => ['7.000', ...cellsAt(i).slice(1)].join(',')).join('\n')}\n`,
    code: 'log/time-stands-still',
    says: /never moves on/,
    line: 2,
  },
  {
    what: 'a time that no clock shows',
    name: 'no-clock.csv',
    content: `${head}\n${Array.from({ length: 60 }, (_, i) => [`${(7 + i / 20).toFixed(2)}e297`, ...cellsAt(i).slice(1)].join(',')).join('\n')}\n`,
    code: 'log/time-no-clock',
    says: /holds 7\.000\S*297, which no clock shows/,
    line: 2,
  },
];
