import { describe, expect, it } from 'vitest';
import { tellingBytes, whyNoLog } from '../../../core/log/index.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const rows = (count: number, row: (i: number) => string) =>
  `${Array.from({ length: count }, (_, i) => row(i)).join('\n')}\n`;
const noise = (length: number) =>
  Uint8Array.from({ length }, (_, i) => (Math.imul(i + 7, 2654435761) >>> 24) & 255);
const log = rows(400, (i) => (i === 0 ? 'Time (s),RPM' : `${i / 20},${2000 + i}`));

describe('a file that never was a log is named with what it is:', () => {
  it.each([
    ['nothing', bytes(''), 'log/empty'],
    ['blanks', bytes(' \n\n'), 'log/empty'],
    ['a picture', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0), 'log/not-a-table'],
    ['a PDF', bytes('%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\n'), 'log/not-a-table'],
    ['JSON', bytes('{"pulls": [1, 2, 3]}'), 'log/not-a-table'],
    [
      'JSON of many lines',
      bytes(`[\n${rows(9000, (i) => `  ["row", { "at": ${i} }],`)}{}]`),
      'log/not-a-table',
    ],
    [
      'a page of many lines',
      bytes(`<html><body>\n${rows(9000, (i) => `<p>${i}, ${i % 7}</p>`)}`),
      'log/not-a-table',
    ],
    ['random bytes', noise(5000), 'log/not-a-table'],
    ['many random bytes', noise(3_000_000).subarray(0, tellingBytes), 'log/not-a-table'],
    ['zero bytes', new Uint8Array(4000), 'log/only-text'],
    ['a letter', bytes('Dear customer,\nthe car is ready.\n'), 'log/only-text'],
    ['a header alone', bytes('Time (s),RPM\n'), 'log/only-text'],
    ['a line without end', bytes('1,2,3,'.repeat(400_000)).subarray(0, tellingBytes), 'log/line-too-long'],
  ])('%s', (_, head, code) => {
    expect(whyNoLog(head, 'a.csv')).toMatchObject({ code, where: { file: 'a.csv' } });
  });
});

describe('a log is none of these, nor is one', () => {
  it.each([
    ['as it should be', bytes(log)],
    ['larger than what is looked at', bytes(log.repeat(200)).subarray(0, tellingBytes)],
    ['in JSON of many lines', bytes(`[\n${rows(9000, (i) => `  { "t": ${i}, "rpm": ${i} },`)}{}]`)],
    ['in a web page', bytes(`<table>\n${rows(9000, (i) => `<tr><td>${i}</td><td>${i % 7}</td></tr>`)}`)],
    ['of one row', bytes('Time (s),RPM\n0,1000\n')],
    ['without a time', bytes(rows(50, (i) => `${(i * 7919) % 501},${i % 3}`))],
    ['of unknown columns', bytes(`Time (s),Thing\n${rows(50, (i) => `${i},${i % 3}`)}`)],
    ['that zero bytes follow', bytes(`${log}${'\0'.repeat(500)}`)],
    ['in which zero bytes stand', bytes(`${log}\0\0\0\n${log}`)],
    ['of 2,500 columns', bytes(rows(3, () => Array.from({ length: 2500 }, (_, i) => i).join(',')))],
    ['in UTF-16', new Uint8Array(new Uint16Array([0xfeff, ...[...log].map((c) => c.charCodeAt(0))]).buffer)],
  ])('%s', (_, head) => {
    expect(whyNoLog(head, 'a.csv')).toBeNull();
  });
});
