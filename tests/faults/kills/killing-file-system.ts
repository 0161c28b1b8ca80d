import { type FileSystem, nodeFileSystem } from '../../../electron/store/index.ts';

/** At which disk operation, counted from 1, the process dies, and at which moment of it. */
export type KillPoint = { readonly operation: number; readonly moment: 'before' | 'half' | 'after' };

function die(): never {
  process.kill(process.pid, 'SIGKILL');
  throw new Error('the signal does not return');
}

/** The real disk, until this process kills itself at the chosen operation. `half` writes half of the bytes. */
export function killingFileSystem(point: KillPoint | null): FileSystem {
  let count = 0;
  const step = async <T>(action: () => Promise<T>, half: () => Promise<unknown> = action): Promise<T> => {
    const isHere = point !== null && ++count === point.operation;
    if (isHere && point.moment === 'before') die();
    try {
      return await (isHere && point.moment === 'half' ? (half() as Promise<T>) : action());
    } finally {
      // Also where the operation failed, as making a folder that exists does.
      if (isHere) die();
    }
  };
  const disk = nodeFileSystem;
  return {
    ...disk,
    async createNew(path) {
      const writer = await step(() => disk.createNew(path));
      return {
        write: (bytes) =>
          step(
            () => writer.write(bytes),
            () => writer.write(bytes.subarray(0, bytes.length >> 1)),
          ),
        sync: () => step(() => writer.sync()),
        close: () => step(() => writer.close()),
      };
    },
    rename: (from, to) => step(() => disk.rename(from, to)),
    makeFolder: (path) => step(() => disk.makeFolder(path)),
    removeFile: (path) => step(() => disk.removeFile(path)),
    removeFolder: (path) => step(() => disk.removeFolder(path)),
    syncFolder: (path) => step(() => disk.syncFolder(path)),
    setReadOnly: (path, readOnly) => step(() => disk.setReadOnly(path, readOnly)),
  };
}
