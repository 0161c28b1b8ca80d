import { expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import { applyEdit, createSession, type SessionEdit } from '../../../core/session/index.ts';
import { editQueue, type SheetChange, withChange } from '../../../renderer/sheets/edit-queue.ts';
import { sheetDocOf, valueAt } from '../../../renderer/sheets/sheet-doc.ts';

/** A host that keeps edits one by one, each when the test lets it answer. */
function slowHost() {
  let session = createSession({
    id: 's1',
    baselineId: 'e0',
    name: 'Fenmoor hatch',
    now: '2027-03-14T10:00:00.000Z',
    car: { mass_kg: 1400 },
  });
  const answers: (() => void)[] = [];
  const sent: SessionEdit[] = [];
  let waiting: readonly SheetChange[] = [];
  const queue = editQueue({
    stored: () => sheetDocOf(session),
    send: (edit) => {
      sent.push(edit);
      return new Promise<void>((resolve) => {
        answers.push(() => {
          session = unwrap(applyEdit({ session, runs: {} }, edit)).session;
          resolve();
        });
      });
    },
    onChange: (next) => {
      waiting = next;
    },
  });
  return {
    queue,
    sent,
    answer: async () => {
      answers.shift()?.();
      await new Promise((resolve) => setTimeout(resolve));
    },
    onScreen: (path: string) => valueAt(waiting.reduce(withChange, sheetDocOf(session)), path),
    kept: (path: string) => valueAt(sheetDocOf(session), path),
    change: (change: (old: typeof session) => typeof session) => {
      session = change(session);
    },
  };
}

const typed = (path: string, value: unknown): SheetChange => ({ path, value, typed: null, part: path });

it('three fields typed while the host is slow: none takes another back, on the screen or in the session', async () => {
  const host = slowHost();
  host.queue.add(typed('car.mass_kg', 1500));
  host.queue.add(typed('car.dragArea_m2', 0.7));
  host.queue.add(typed('air.ambient_C', 31));
  const flushed = host.queue.flush();
  for (const path of ['car.mass_kg', 'car.dragArea_m2', 'air.ambient_C']) {
    expect(host.onScreen(path)).toBe(
      { 'car.mass_kg': 1500, 'car.dragArea_m2': 0.7, 'air.ambient_C': 31 }[path],
    );
  }
  for (let i = 0; i < 3; i++) {
    expect(host.sent).toHaveLength(i + 1);
    await host.answer();
    expect(host.onScreen('car.mass_kg')).toBe(1500);
    expect(host.onScreen('car.dragArea_m2')).toBe(0.7);
    expect(host.onScreen('air.ambient_C')).toBe(31);
  }
  await flushed;
  expect([host.kept('car.mass_kg'), host.kept('car.dragArea_m2'), host.kept('air.ambient_C')]).toEqual([
    1500, 0.7, 31,
  ]);
});

it('keystrokes in one field are one edit until it is on its way, then one more', async () => {
  const host = slowHost();
  host.queue.add(typed('car.mass_kg', 14));
  host.queue.add(typed('car.mass_kg', 145));
  void host.queue.flush();
  host.queue.add(typed('car.mass_kg', 1450));
  host.queue.add(typed('car.mass_kg', 1455));
  expect(host.sent).toHaveLength(1);
  await host.answer();
  expect(host.onScreen('car.mass_kg')).toBe(1455);
  void host.queue.flush();
  await host.answer();
  expect(host.sent).toHaveLength(2);
  expect(host.kept('car.mass_kg')).toBe(1455);
});

it('what another window changed in the same part meanwhile stays', async () => {
  const host = slowHost();
  host.queue.add(typed('car.mass_kg', 1500));
  host.change((session) => ({ ...session, car: { ...session.car, dragArea_m2: 0.66 } }));
  void host.queue.flush();
  await host.answer();
  expect([host.kept('car.mass_kg'), host.kept('car.dragArea_m2')]).toEqual([1500, 0.66]);
});

it('an edit that failed to be sent is not forgotten: the next flush sends it', async () => {
  const sent: SessionEdit[] = [];
  let isDown = true;
  const session = createSession({
    id: 's1',
    baselineId: 'e0',
    name: 'Fenmoor hatch',
    now: '2027-03-14T10:00:00.000Z',
    car: { mass_kg: 1400 },
  });
  const queue = editQueue({
    stored: () => sheetDocOf(session),
    send: async (edit) => {
      if (isDown) throw new Error('the host is gone');
      sent.push(edit);
    },
    onChange: () => {},
  });
  queue.add(typed('car.mass_kg', 1500));
  await expect(queue.flush()).rejects.toThrow('the host is gone');
  isDown = false;
  await queue.flush();
  expect(sent).toMatchObject([{ type: 'car.set', car: { mass_kg: 1500 } }]);
});
