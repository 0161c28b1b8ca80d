import { roomOfBlock } from '../../core/log/index.ts';
import type { SourceStream } from '../store/index.ts';
import type { FromLogWorker, FromRowWorker, Part, ToLogWorker, ToRowWorker } from './log-messages.ts';

/** Bytes of a part: some three milliseconds of reading. */
const partLength = 1 << 20;
/** Parts on their way, so that neither worker waits for the other and memory stays bounded. */
const mostAhead = 5;
/**
 * The worker for rows writes into the same memory again and again and is the faster by half, the other has to put all
 * together besides: so the one always has a part to go on with, and the other gets what is too much for it.
 */
const mostWithRowWorker = 2;
const mostWithLogWorker = 1;
/** Blocks of rows that were read apart, being read or waiting for their turn. */
const mostBlocks = 4;

/** The worker that reads a log, and the one that reads rows beside it, where it is there and at the ready. */
export type Readers = {
  readonly toLogWorker: (message: ToLogWorker, transfer?: ArrayBuffer[]) => void;
  readonly toRowWorker: (message: ToRowWorker, transfer?: ArrayBuffer[]) => void;
  readonly isRowWorkerReady: () => boolean;
};

/** Deals one file to both readers, part by part; what they answer has to be handed to `taken` and `rows`. */
export type PartDealer = {
  /** Comes true once all was sent, or it was stopped. */
  readonly pump: () => Promise<void>;
  readonly taken: (message: FromLogWorker & { readonly kind: 'taken' }) => void;
  readonly rows: (message: FromRowWorker & { readonly kind: 'rows' }) => void;
  readonly stop: () => void;
};

/**
 * Parts end with a line feed where there is one, so that each holds whole rows. Once the head of the file is settled,
 * those that begin with a row may go to either reader; they are put together in the order of the file.
 *
 * @param onBytes  hears the bytes of the file in their order
 */
export function createDealer(
  source: SourceStream,
  readers: Readers,
  onBytes: (bytes: Uint8Array) => void,
): PartDealer {
  const free: Part[] = Array.from({ length: mostAhead }, () => new Uint8Array(partLength));
  /** Room for blocks; null until it is known how rows are written. */
  let spare: Float64Array[] | null = null;
  let place = 0;
  let withLogWorker = 0;
  let withRowWorker = 0;
  let isStopped = false;
  let whenChanged: () => void = () => undefined;

  /** Waits until something is so, or nothing is to be sent any more. */
  async function until(isSo: () => boolean): Promise<void> {
    while (!isSo() && !isStopped) {
      await new Promise<void>((resolve) => {
        whenChanged = resolve;
      });
    }
  }

  function giveBack(part: Part): void {
    free.push(new Uint8Array(part.buffer));
    whenChanged();
  }

  async function send(part: Part, isApart: boolean): Promise<void> {
    const mayBeApart = () => withRowWorker < mostWithRowWorker && spare !== null && spare.length > 0;
    if (isApart && spare) await until(() => mayBeApart() || withLogWorker < mostWithLogWorker);
    if (isStopped) return;
    const numbers = isApart && mayBeApart() ? spare?.pop() : undefined;
    if (numbers) {
      withRowWorker++;
      readers.toRowWorker({ kind: 'part', place, part, numbers }, [part.buffer]);
    } else {
      withLogWorker++;
      readers.toLogWorker({ kind: 'part', place, part }, [part.buffer]);
    }
    place++;
  }

  async function pump(): Promise<void> {
    let rest: Uint8Array = new Uint8Array(0);
    let isAtRow = false;
    for (;;) {
      await until(() => free.length > 0);
      const part = free.pop();
      if (!part || isStopped) return;
      part.set(rest);
      const length = await source.read(part.subarray(rest.length));
      if (isStopped) return;
      const filled = part.subarray(0, rest.length + length);
      onBytes(filled.subarray(rest.length));
      if (length === 0) {
        if (filled.length > 0) await send(filled, false);
        break;
      }
      const end = filled.lastIndexOf(10) + 1;
      const hasRows = end > 0;
      const sent = hasRows ? filled.subarray(0, end) : filled;
      rest = filled.slice(sent.length);
      await send(sent, hasRows && isAtRow);
      isAtRow = hasRows;
    }
    if (!isStopped) readers.toLogWorker({ kind: 'end', place });
  }

  return {
    pump,
    taken: ({ part, numbers, style }) => {
      if (numbers) spare?.push(numbers);
      if (style && !spare && readers.isRowWorkerReady()) {
        readers.toRowWorker({ kind: 'style', style });
        const length = roomOfBlock(style, partLength);
        spare = Array.from({ length: mostBlocks }, () => new Float64Array(new SharedArrayBuffer(8 * length)));
      }
      if (part) {
        withLogWorker--;
        giveBack(part);
      } else whenChanged();
    },
    rows: ({ place: at, part, block, numbers }) => {
      withRowWorker--;
      const isAll = block.size_bytes === part.length;
      const message = { kind: 'rows', place: at, block, numbers } as const;
      if (isAll) {
        readers.toLogWorker({ ...message, rest: null });
        giveBack(part);
        return;
      }
      withLogWorker++;
      whenChanged();
      readers.toLogWorker({ ...message, rest: part.subarray(block.size_bytes) }, [part.buffer]);
    },
    stop: () => {
      isStopped = true;
      whenChanged();
    },
  };
}
