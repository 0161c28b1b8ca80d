import { setTimeout as sleep } from 'node:timers/promises';
import { beforeEach, expect, it } from 'vitest';
import { fail, ok } from '../../../core/result/index.ts';
import { channels } from '../../../electron/desktop/channel-names.ts';
import { openWindowChannel } from '../../../electron/desktop/window-channel.ts';
import { type DoubleHost, doubleHost } from '../../support/double-host.ts';
import { DoubleContents, type ElectronDouble, electronDouble } from '../../support/electron-double.ts';

let double: ElectronDouble;
let host: DoubleHost;
let contents: DoubleContents | undefined;
let close: () => void;

beforeEach(() => {
  double = electronDouble();
  contents = new DoubleContents(7);
  open();
});

function open(answer?: Parameters<typeof doubleHost>[0]): void {
  host = doubleHost(answer);
  close = openWindowChannel(double.electron, host, () => contents as never);
}

const top = { url: 'app://workbench/', parent: null };
const own = { sender: { id: 7 }, senderFrame: top };

function request(event: unknown, name: unknown = 'ledger.get', input: unknown = {}, id: unknown = 'r1') {
  const handler = double.ipcHandlers.get(channels.request);
  return handler?.(...([event, name, input, id] as never[])) as Promise<{
    ok: boolean;
    problems?: unknown[];
  }>;
}

it('the page’s request reaches the host, and the answer comes back', async () => {
  expect(await request(own, 'ledger.get', { band: null })).toEqual(
    ok({ name: 'ledger.get', input: { band: null } }),
  );
  expect(host.asked[0]?.context.requestId).toBe('r1');
});

it.each([
  ['another window', { sender: { id: 8 }, senderFrame: top }],
  ['a frame inside the page', { sender: { id: 7 }, senderFrame: { ...top, parent: {} } }],
  [
    'a page from elsewhere',
    { sender: { id: 7 }, senderFrame: { url: 'https://attacker.example/', parent: null } },
  ],
  ['a look-alike', { sender: { id: 7 }, senderFrame: { url: 'app://workbench.example/', parent: null } }],
  ['a frame that is gone', { sender: { id: 7 }, senderFrame: null }],
])('%s is refused', async (_, event) => {
  expect(await request(event)).toEqual(fail({ code: 'contract/refused', facts: { why: 'sender' } }));
  expect(host.asked).toEqual([]);
});

it('nobody is heard while there is no window', async () => {
  contents = undefined;
  expect((await request(own)).ok).toBe(false);
});

it.each([
  [5, 'r1'],
  ['ledger.get', 5],
  ['ledger.get', ''],
  ['ledger.get', '<b>'],
  ['ledger.get', 'x'.repeat(65)],
])('a message of the wrong shape is refused: %s %s', async (name, id) => {
  expect(await request(own, name, {}, id)).toEqual(
    fail({ code: 'contract/refused', facts: { why: 'message' } }),
  );
  expect(host.asked).toEqual([]);
});

it('a request that is given up tells the host to stop, unless somebody else gives it up', async () => {
  open(async (_name, _input, { signal }) => {
    for (let i = 0; i < 50 && !signal.aborted; i++) await sleep(5);
    return ok(signal.aborted);
  });
  const answer = request(own);
  double.ipcMain.emit(channels.cancel, { ...own, sender: { id: 8 } }, 'r1');
  await sleep(10);
  expect(host.asked[0]?.context.signal.aborted).toBe(false);
  double.ipcMain.emit(channels.cancel, own, 'r1');
  expect(await answer).toEqual(ok(true));
});

it('a fault of the host is a problem, not an exception over the border', async () => {
  open(() => {
    throw new Error('broken');
  });
  expect(await request(own)).toEqual(fail({ code: 'contract/internal', facts: { detail: 'Error: broken' } }));
});

it('events of the host reach the window, until the channel closes', () => {
  host.emit({ type: 'session-changed', revision: 3 });
  expect(contents?.sent).toEqual([[channels.event, { type: 'session-changed', revision: 3 }]]);
  close();
  host.emit({ type: 'session-changed', revision: 4 });
  expect(contents?.sent).toHaveLength(1);
  expect(double.ipcHandlers.size).toBe(0);
});
