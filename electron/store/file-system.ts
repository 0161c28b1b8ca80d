/** What stands in a folder. A link is `other`: the store never follows one inside a session. */
export type EntryKind = 'file' | 'folder' | 'other';
export type Entry = { readonly name: string; readonly kind: EntryKind };
export type FileState = { readonly kind: EntryKind; readonly size: number; readonly modified_ms: number };

/** A file open for reading. */
export type Reader = {
  /** Fills `into` from `position`, or from where the last read ended; returns the bytes read, 0 at the end. */
  read(into: Uint8Array, position?: number): Promise<number>;
  /** Length and date of the open file itself, whatever its name points at by now. */
  state(): Promise<{ readonly size: number; readonly modified_ms: number }>;
  close(): Promise<void>;
};

/** A new file open for writing. Nothing written is durable before `sync` has returned. */
export type Writer = {
  write(bytes: Uint8Array): Promise<void>;
  sync(): Promise<void>;
  close(): Promise<void>;
};

/**
 * The few disk operations that the store is made of. Everything in `electron/store` goes through one of these
 * objects, so that a power cut, a full disk or a vanished share can be played in a test at each single
 * operation. Failures are thrown as Node throws them, with `code` (`ENOSPC`); `problemOf` names them.
 */
export type FileSystem = {
  /** Refuses folders, devices and pipes; refuses a link unless `followLinks`. */
  openRead(path: string, options?: { readonly followLinks?: boolean }): Promise<Reader>;
  /** Whole content of a plain file, refusing what is longer than `limit` bytes (code `EFBIG`). */
  readFile(path: string, limit: number): Promise<Uint8Array>;
  /** Fails with `EEXIST` where something stands already. */
  createNew(path: string): Promise<Writer>;
  /** Replaces a file at the target in one step. */
  rename(from: string, to: string): Promise<void>;
  /** Fails with `EEXIST` where something stands already; its parent must exist. */
  makeFolder(path: string): Promise<void>;
  removeFile(path: string): Promise<void>;
  /** Only an empty one. */
  removeFolder(path: string): Promise<void>;
  /** Sorted by name. */
  list(folder: string): Promise<Entry[]>;
  /** Of the thing itself, never of a link's target; null where nothing stands. */
  stat(path: string): Promise<FileState | null>;
  /** Makes creations, renames and removals inside a folder durable. */
  syncFolder(folder: string): Promise<void>;
  /** Sets a file's date to now by the clock of the disk, which two machines on one share have in common. */
  touch(path: string): Promise<void>;
  setReadOnly(path: string, readOnly: boolean): Promise<void>;
};

/** The `code` of an error as Node throws it, or undefined for anything else. */
export function errorCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}

/** Removes a file that somebody else may remove meanwhile; tells whether it was this call that did. */
export async function removeIfThere(path: string, fs: FileSystem): Promise<boolean> {
  try {
    await fs.removeFile(path);
    return true;
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return false;
    throw error;
  }
}

/** Whether a rename failed because something stands at its target: what Linux, macOS and Windows say of it. */
export function isNameTaken(error: unknown): boolean {
  return ['EEXIST', 'ENOTEMPTY', 'EPERM'].includes(errorCode(error) ?? '');
}

/** An error as Node would throw it, for implementations of FileSystem. */
export function diskError(code: string, path: string): Error {
  return Object.assign(new Error(`${code}: ${path}`), { code, path });
}
