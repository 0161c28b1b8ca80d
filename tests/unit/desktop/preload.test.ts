import { expect, it, vi } from 'vitest';

const double = vi.hoisted(() => {
  const calls: unknown[][] = [];
  const exposed: Record<string, Record<string, (...args: never[]) => unknown>> = {};
  const record =
    (name: string) =>
    (...args: unknown[]) => {
      calls.push([name, ...args]);
      return name;
    };
  return { calls, exposed, record };
});

vi.mock('electron', () => ({
  contextBridge: {
    exposeInMainWorld: (name: string, api: (typeof double.exposed)[string]) => {
      double.exposed[name] = api;
    },
  },
  ipcRenderer: Object.fromEntries(['invoke', 'send', 'on', 'off'].map((name) => [name, double.record(name)])),
  webUtils: { getPathForFile: double.record('getPathForFile') },
}));

it('the page gets four functions, on fixed channels, and no event object', async () => {
  await import('../../../electron/desktop/preload.ts');
  expect(Object.keys(double.exposed)).toEqual(['onechange']);
  const bridge = double.exposed.onechange ?? {};
  expect(Object.keys(bridge)).toEqual(['request', 'cancel', 'pathOf', 'subscribe']);

  bridge.request?.(...(['ledger.get', {}, 'r1', 'more'] as never[]));
  bridge.cancel?.(...(['r1'] as never[]));
  bridge.pathOf?.(...(['file'] as never[]));
  expect(double.calls).toEqual([
    ['invoke', 'onechange:request', 'ledger.get', {}, 'r1'],
    ['send', 'onechange:cancel', 'r1'],
    ['getPathForFile', 'file'],
  ]);

  double.calls.length = 0;
  const heard: unknown[][] = [];
  const stop = bridge.subscribe?.(...([(...args: unknown[]) => heard.push(args)] as never[])) as () => void;
  const [, channel, hear] = double.calls[0] ?? [];
  (hear as (...args: unknown[]) => void)({ sender: 'secret' }, { type: 'session-changed' });
  expect([channel, heard]).toEqual(['onechange:event', [[{ type: 'session-changed' }]]]);
  stop();
  expect(double.calls[1]).toEqual(['off', 'onechange:event', hear]);
});
