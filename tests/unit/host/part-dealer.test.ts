import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import type { BlockStyle, RowBlock } from '../../../core/log/index.ts';
import type { ToLogWorker, ToRowWorker } from '../../../electron/host/log-messages.ts';
import { createDealer } from '../../../electron/host/part-dealer.ts';
import type { SourceStream } from '../../../electron/store/index.ts';
import { createRandom } from '../../support/log-generator/random.ts';

const style: BlockStyle = { delimiter: ',', decimal: '.', cells: 2, width: 2 };

function sourceOf(bytes: Uint8Array, mostAtOnce: number): SourceStream {
  let at = 0;
  return {
    size: bytes.length,
    read: async (into: Uint8Array) => {
      const some = bytes.subarray(at, at + Math.min(mostAtOnce, into.length));
      into.set(some);
      at += some.length;
      return some.length;
    },
    damage: () => null,
    close: async () => undefined,
  };
}

/** Deals a file to two readers that take a while, and tells what each got, in the order of the file. */
async function dealt(
  bytes: Uint8Array,
  { mostAtOnce = 1e9, readShare = 1, isReady = true, stopAfter = Number.POSITIVE_INFINITY } = {},
) {
  const random = createRandom(5);
  const got: { place: number; to: 'log' | 'rows'; bytes: Uint8Array }[] = [];
  const heard: Uint8Array[] = [];
  let out = 0;
  let mostOut = 0;
  let end = -1;
  const leave = (buffers: ArrayBuffer[] = []) => {
    out += buffers.length;
    mostOut = Math.max(mostOut, out);
  };
  /** Parts come back as they were sent: the buffer and where in it they lie. */
  const later = (answer: () => void) => setTimeout(random.between(0, 3)).then(answer);
  const dealer = createDealer(
    sourceOf(bytes, mostAtOnce),
    {
      toLogWorker: (message: ToLogWorker, transfer?: ArrayBuffer[]) => {
        leave(transfer);
        if (message.kind === 'end') end = message.place;
        if (message.kind === 'part') {
          const { part, place } = message;
          got.push({ place, to: 'log', bytes: part.slice() });
          if (got.length >= stopAfter) dealer.stop();
          later(() => {
            out--;
            dealer.taken({ kind: 'taken', part, numbers: null, style });
          });
        } else if (message.kind === 'rows') {
          const { place, block, numbers, rest } = message;
          got.push({ place, to: 'rows', bytes: block.tail });
          if (rest) got.push({ place: place + 0.5, to: 'log', bytes: rest.slice() });
          later(() => {
            if (rest) out--;
            dealer.taken({ kind: 'taken', part: rest, numbers, style });
          });
        }
      },
      toRowWorker: (message: ToRowWorker, transfer?: ArrayBuffer[]) => {
        leave(transfer);
        if (message.kind !== 'part') return;
        const { part, place, numbers } = message;
        const size_bytes = Math.floor(readShare * part.length);
        // Here the tail is all that was read, to be looked at.
        const block: RowBlock = {
          rows: 1,
          lines: 1,
          size_bytes,
          columns: [],
          flags: [],
          tail: part.slice(0, size_bytes),
        };
        later(() => {
          out--;
          dealer.rows({ kind: 'rows', place, part, block, numbers });
        });
      },
      isRowWorkerReady: () => isReady,
    },
    (some) => heard.push(some.slice()),
  );
  await dealer.pump();
  await setTimeout(20);
  got.sort((a, b) => a.place - b.place);
  return { got, heard: Buffer.concat(heard), all: Buffer.concat(got.map((g) => g.bytes)), mostOut, end };
}

const isSame = (a: Uint8Array, b: Uint8Array) => Buffer.compare(a, b) === 0;

function rowsOf(size: number, lineEnd = '\n'): Uint8Array {
  const row = `1234,5678${lineEnd}`;
  return new TextEncoder().encode(row.repeat(Math.ceil(size / row.length)));
}

describe('a file dealt to two readers', () => {
  it.each([1, 0.4, 0])('comes to them whole, where %d of a part can be read apart', async (readShare) => {
    const bytes = rowsOf(12e6).subarray(0, 12e6 - 3);
    const { got, all, heard, mostOut, end } = await dealt(bytes, { readShare, mostAtOnce: 300_001 });
    expect(isSame(all, bytes)).toBe(true);
    expect(isSame(heard, bytes)).toBe(true);
    expect(mostOut).toBeLessThanOrEqual(5);
    expect(end).toBe(Math.floor(got.at(-1)?.place ?? 0) + 1);
    const apart = got.filter((g) => g.to === 'rows');
    expect(apart.length).toBeGreaterThan(8);
    if (readShare === 1)
      for (const { bytes: part } of apart) {
        expect(new TextDecoder().decode(part.subarray(0, 5))).toBe('1234,');
        expect(part.at(-1)).toBe(10);
      }
  });

  it('goes to both in about equal parts, the end of it to the one that reads the log', async () => {
    const { got } = await dealt(rowsOf(30e6));
    const apart = got.filter((g) => g.to === 'rows').length;
    expect(apart / got.length).toBeGreaterThan(0.3);
    expect(apart / got.length).toBeLessThan(0.7);
    const unended = await dealt(rowsOf(5e6).subarray(0, 5e6 - 2));
    expect(unended.got.at(-1)?.to).toBe('log');
  });

  it.each([
    ['the other is not at the ready', rowsOf(5e6), false],
    ['its lines end without a line feed', rowsOf(5e6, '\r'), true],
    ['it is one long line', new Uint8Array(5e6).fill(48), true],
  ])('goes to one alone where %s', async (_, bytes, isReady) => {
    const { got, all } = await dealt(bytes, { isReady });
    expect(got.map((g) => g.to)).not.toContain('rows');
    expect(isSame(all, bytes)).toBe(true);
  });

  it('gives no rows away that begin within a line', async () => {
    const long = new Uint8Array(3e6).fill(48);
    const bytes = Buffer.concat([rowsOf(4e6), long, rowsOf(4e6)]);
    const { got, all } = await dealt(bytes);
    expect(isSame(all, bytes)).toBe(true);
    for (const { bytes: part } of got.filter((g) => g.to === 'rows'))
      expect(part.subarray(0, 20).every((b) => b === 48)).toBe(false);
  });

  it('is dealt no further once it was stopped, and nobody waits', async () => {
    const { got, end } = await dealt(rowsOf(30e6), { stopAfter: 3 });
    expect(got.length).toBeLessThan(10);
    expect(end).toBe(-1);
  });

  it('that is empty comes to its end', async () => {
    const { got, end } = await dealt(new Uint8Array(0));
    expect(got).toEqual([]);
    expect(end).toBe(0);
  });
});
