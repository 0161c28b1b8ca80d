export * from './file-system.ts';
export { nodeFileSystem } from './node-file-system.ts';
export { pathInside } from './path-inside.ts';
export type { Content } from './replace-file.ts';
export { safeFolderName, slug } from './safe-name.ts';
export { sha256, sha256OfFile } from './sha256.ts';
export { writeAtomic } from './write-atomic.ts';
