import { type FileSystem, nodeFileSystem } from '../../electron/store/index.ts';

/** The real disk without its flushes, for making what is not itself under test. */
export const hastyDisk: FileSystem = {
  ...nodeFileSystem,
  async createNew(path) {
    return { ...(await nodeFileSystem.createNew(path)), sync: async () => undefined };
  },
  syncFolder: async () => undefined,
};
