export { contentHash } from './content-hash.ts';
export { sampleCopy } from './sample-copy.ts';
export { type UserFolders, userFolders } from './user-folders.ts';
