import { randomUUID } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { HostEvent, HostPort, RequestName, Snapshot } from '../../../core/contract/index.ts';
import type { Result } from '../../../core/result/index.ts';
import { createHost, preferencesInMemory } from '../../../electron/host/index.ts';
import { type Carrier, desktop, direct, web } from '../../support/carriers.ts';
import { copyOfSample } from '../../support/sample-session.ts';

const logText = readFileSync(
  new URL('../../../sample-sessions/loose-logs/after-1.10-bar.csv', import.meta.url),
  'utf8',
);

/** One suite for every way a message can take: whatever a screen may rely on, all shells must keep. */
describe.each([
  ['no shell', direct],
  ['the loopback shell', web],
  ['the desktop shell', desktop],
])('through %s', (_, carry) => {
  let sample: string;
  let host: HostPort;
  let carrier: Carrier;
  const events: HostEvent[] = [];

  beforeAll(async () => {
    sample = copyOfSample();
    host = createHost({
      version: '1.2.3',
      shell: 'terminal',
      sessionsFolder: mkdtempSync(join(tmpdir(), 'onechange-sessions-')),
      sampleFolder: sample,
      preferences: preferencesInMemory(),
      now: () => new Date().toISOString(),
      newId: randomUUID,
    });
    carrier = await carry(host);
    carrier.client.subscribe((event) => events.push(event));
  });

  afterAll(async () => {
    await carrier.close();
    await host.close();
    rmSync(dirname(sample), { recursive: true, force: true });
  });

  const codes = (result: Result<unknown>): unknown =>
    result.ok ? 'ok' : result.problems.map((one) => one.code);

  it('a request is answered', async () => {
    const info = await carrier.client.request('app.info', {});
    expect(info).toMatchObject({
      ok: true,
      value: { version: '1.2.3', sampleFolder: sample, openFolder: null },
    });
  });

  it('problems come back with their codes and facts', async () => {
    expect(codes(await carrier.client.request('ledger.get', {}))).toEqual(['contract/no-session']);
    expect(codes(await carrier.client.request('session.edit', { edits: [] }))).toEqual([
      'contract/input-invalid',
    ]);
    const unknown = await carrier.client.request('no.such' as RequestName, {} as never);
    expect(unknown).toMatchObject({
      ok: false,
      problems: [{ code: 'contract/unknown-request', facts: { name: 'no.such' } }],
    });
    for (const name of ['__proto__', 'constructor', 'toString', ''])
      expect(codes(await carrier.client.request(name as RequestName, {} as never)), name).not.toBe('ok');
  });

  it('a session opens, and every number of its ledger comes through as the host has it', async () => {
    const opened = await carrier.client.request('sessions.open', { folder: sample });
    expect(opened).toMatchObject({ ok: true, value: { session: { name: 'Fenmoor hatch' } } });
    const ledger = await carrier.client.request('ledger.get', {});
    const context = { requestId: 'plain', signal: { aborted: false }, progress: () => {} };
    expect(ledger).toEqual(await host.handle('ledger.get', {}, context));
    expect(ledger.ok && ledger.value.lines.length).toBeGreaterThan(4);
  });

  it('an edit is answered, told as an event, and undone', async () => {
    events.length = 0;
    const before = await carrier.client.request('session.get', {});
    const edit = { edits: [{ type: 'session.rename' as const, name: 'Fenmoor hatch, changed' }] };
    const edited = await carrier.client.request('session.edit', edit);
    expect(edited.ok && edited.value.session.name).toBe('Fenmoor hatch, changed');
    const undone = await carrier.client.request('session.undo', {});
    const nameOf = (result: Result<Snapshot | null>): unknown => result.ok && result.value?.session.name;
    expect(nameOf(undone)).toBe(nameOf(before));
    const changes = (): number => events.filter((event) => event.type === 'session-changed').length;
    for (let i = 0; i < 100 && changes() < 2; i++) await sleep(20);
    expect(changes()).toBe(2);
  });

  it('a log that a person drops is imported byte for byte', async () => {
    const file = carrier.file('Lauf 3 – nachher Ü.csv', logText);
    const imported = await carrier.client.upload(file, null);
    if (!imported.ok) throw new Error(JSON.stringify(imported.problems));
    const { record } = imported.value.run;
    expect(record.name).toBe('Lauf 3 – nachher Ü.csv');
    expect(readFileSync(join(sample, 'runs', record.id, 'source.csv'), 'utf8')).toBe(logText);
  });

  it('a request that was given up before it began changes nothing', async () => {
    const cancel = new AbortController();
    cancel.abort();
    const answer = await carrier.client.request('ledger.get', {}, { signal: cancel.signal });
    expect(codes(answer)).toEqual(['contract/cancelled']);
  });
});
