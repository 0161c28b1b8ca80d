import { mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { createFaultLog, faultLine } from '../../../electron/desktop/fault-log.ts';

const now = new Date('2027-03-14T10:00:00Z');

it('a line tells what went wrong and where in our code, and nothing of the person', () => {
  const error = Object.assign(new Error('cannot read /home/jo/Cars/Jo Smith’s hatch/session.json'), {
    code: 'ENOENT',
  });
  error.stack = [
    `Error: ${error.message}`,
    '    at readSession (/home/jo/onechange/electron/store/document.ts:12:5)',
    '    at async open (file:///C:/Users/Jo/onechange/electron/host/create-host.mjs:40:11)',
    '    at C:\\Users\\Jo\\onechange\\main.mjs:1:1',
  ].join('\n');
  expect(faultLine(now, 'host', error)).toBe(
    '2027-03-14T10:00:00.000Z | host | Error | ENOENT | at readSession (document.ts:12:5) | at async open (create-host.mjs:40:11) | at main.mjs:1:1',
  );
  expect(faultLine(now, 'host', 'a string with /home/jo')).toBe(
    '2027-03-14T10:00:00.000Z | host | string | -',
  );
});

it('the file keeps to its size, the older half beside it', () => {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-log-'));
  writeFileSync(join(folder, 'faults.log'), 'x'.repeat(1024 * 1024 + 1));
  createFaultLog(folder, () => now)('host', new Error('a'));
  expect(readdirSync(folder).sort()).toEqual(['faults.1.log', 'faults.log']);
  expect(statSync(join(folder, 'faults.log')).size).toBeLessThan(10_000);
});

it('a log that cannot be written is no second fault', () => {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-log-'));
  writeFileSync(join(folder, 'file'), '');
  expect(() => createFaultLog(join(folder, 'file', 'logs'), () => now)('host', new Error('a'))).not.toThrow();
  expect(readFileSync(join(folder, 'file'), 'utf8')).toBe('');
});
