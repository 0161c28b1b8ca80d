import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { copyOfSample } from '../../support/sample-session.ts';

const project = new URL('../../..', import.meta.url).pathname;
const guard = new URL('../../support/no-network.mjs', import.meta.url).href;

function guarded(args: readonly string[]) {
  return spawnSync(process.execPath, ['--import', guard, ...args], { cwd: project, encoding: 'utf8' });
}

describe('the guard', () => {
  it.each([
    "require('node:net').connect(9, '192.0.2.1')",
    "require('node:http').get('http://192.0.2.1/')",
    "fetch('http://192.0.2.1/')",
    "require('node:dns').lookup('example.invalid', () => {})",
    "require('node:dgram').createSocket('udp4')",
  ])('bites on %s', (source) => {
    const { status, stderr } = guarded(['-e', source]);
    expect([status, stderr.includes('OUTGOING')]).toEqual([97, true]);
  });
});

describe('the program', () => {
  const cli = 'electron/cli/onechange.mjs';

  it('asks nobody on any network for a ledger, a judgement and a handover', () => {
    const session = copyOfSample();
    const logs = join(project, 'sample-sessions', 'logs');
    const out = join(mkdtempSync(join(tmpdir(), 'onechange-out-')), 'handover.html');
    for (const args of [
      ['ledger', session, '--json'],
      ['check', session, '--json'],
      ['summary', session, '--out', out],
      [
        'judge',
        '--car',
        'sample-sessions/car.json',
        '--before',
        join(logs, '0-baseline-a.csv'),
        '--after',
        join(logs, '2-boost-a.csv'),
        '--json',
      ],
    ]) {
      const { status, stderr, stdout } = guarded([cli, ...args]);
      expect([args[0], status, stderr], stdout).toEqual([args[0], 0, '']);
    }
  });
});
