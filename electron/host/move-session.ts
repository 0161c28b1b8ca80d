import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import type { Packed, RequestContext, Unpacked } from '../../core/contract/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { nodeFileSystem, safeFolderName, sha256OfFile, unzipSession, zipSession } from '../store/index.ts';

const isZip = (path: string) => /\.zip$/i.test(path);

/**
 * Packs a session folder into one zip. Nothing is ever written over.
 *
 * Errors: store/already-there; as zipSession.
 */
export async function packSession(
  folder: string,
  name: string,
  path: string | null,
  now: string,
  context: RequestContext,
): Promise<Result<Packed>> {
  const asked = resolve(path ?? join(dirname(folder), safeFolderName(name)));
  const target = isZip(asked) ? asked : `${asked}.zip`;
  if ((await nodeFileSystem.stat(target)) !== null) {
    return fail({ code: 'store/already-there', facts: { path: target } });
  }
  const { signal } = context;
  const progress = (share: number) => context.progress(share, target);
  const zipped = await zipSession(folder, target, { now, signal, progress });
  if (!zipped.ok) return zipped;
  const { files, bytes, sha256 } = zipped.value;
  return ok({ path: target, files, size_bytes: bytes, sha256 });
}

/** Unpacks a zip into a new session folder in `into`. Errors: as unzipSession. */
export async function unpackSession(
  path: string,
  into: string,
  context: RequestContext,
): Promise<Result<Unpacked>> {
  const zip = resolve(path);
  const { signal } = context;
  const progress = (share: number) => context.progress(share, zip);
  const unpacked = await unzipSession(zip, resolve(into), { signal, progress });
  if (!unpacked.ok) return unpacked;
  const { sha256 } = await sha256OfFile(zip, nodeFileSystem, { followLinks: true });
  return ok({ ...unpacked.value, sha256 });
}

/**
 * Runs an action on a session folder, or on the session in a zip, unpacked to a place of its own meanwhile.
 *
 * Errors: as unzipSession.
 */
export async function withCopy<T>(
  path: string,
  context: RequestContext,
  action: (folder: string) => Promise<Result<T>>,
): Promise<Result<T>> {
  const at = resolve(path);
  if (!isZip(at)) return action(at);
  const place = await mkdtemp(join(tmpdir(), 'onechange-merge-'));
  try {
    const unpacked = await unpackSession(at, place, context);
    return unpacked.ok ? await action(unpacked.value.folder) : unpacked;
  } finally {
    await rm(place, { recursive: true, force: true });
  }
}
