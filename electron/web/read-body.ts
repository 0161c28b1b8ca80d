import type { IncomingMessage } from 'node:http';
import type { Limits } from './limits.ts';
import { Refused } from './refused.ts';

/** The whole body of a JSON request as text. Throws Refused past its size or time. */
export async function readText(request: IncomingMessage, limits: Limits): Promise<string> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of measured(request, limits.jsonBytes, () => limits.json_ms)) chunks.push(chunk);
  return Buffer.concat(chunks).toString('utf8');
}

/** The body of an upload as it comes. Throws Refused where it is too large, or drips. */
export function readUpload(request: IncomingMessage, limits: Limits): AsyncIterable<Uint8Array> {
  return measured(request, limits.uploadBytes, (bytes) =>
    Math.max(limits.uploadGrace_ms, (1000 * bytes) / limits.uploadRate_B_s),
  );
}

/**
 * @param allowed_ms how long we may have waited for the client in all, after so many bytes. Only waiting
 *   counts: a slow disk on our side must not look like a slow client.
 */
async function* measured(
  request: IncomingMessage,
  most: number,
  allowed_ms: (bytes: number) => number,
): AsyncIterable<Uint8Array> {
  const tooLarge = new Refused(413, `more than ${most} bytes`);
  if (Number(request.headers['content-length'] ?? 0) > most) throw tooLarge;
  // Left whole when we stop early, so that the refusal can still be sent.
  const chunks: AsyncIterator<Uint8Array> = request.iterator({ destroyOnReturn: false });
  let bytes = 0;
  let waited_ms = 0;
  for (;;) {
    const since = performance.now();
    const next = await within(chunks.next(), allowed_ms(bytes) - waited_ms);
    waited_ms += performance.now() - since;
    if (next.done) return;
    bytes += next.value.length;
    if (bytes > most) throw tooLarge;
    yield next.value;
  }
}

async function within<T>(promise: Promise<T>, limit_ms: number): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Refused(408, 'too slow')), Math.max(0, limit_ms));
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
    // The loser of the race must not end the process when its socket goes away.
    promise.catch(() => {});
  }
}
