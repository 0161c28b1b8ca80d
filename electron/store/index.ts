export { type CacheArray, type ChannelCache, readChannelCache, writeChannelCache } from './channel-cache.ts';
export * from './check-session.ts';
export * from './create-session.ts';
export * from './file-system.ts';
export * from './import-log.ts';
export { keepHandover } from './keep-handover.ts';
export * from './list-sessions.ts';
export { type FileConflict, type MergeRecord, mergeRecords } from './merge-records.ts';
export { type MergeReport, mergeSession } from './merge-session.ts';
export { nodeFileSystem } from './node-file-system.ts';
export {
  closeSession,
  type OpenOptions,
  type OpenSession,
  openSession,
  type StoredRun,
  whyNotWritable,
} from './open-session.ts';
export { type PackedNumbers, unpackNumbers } from './packed-numbers.ts';
export { pathInside } from './path-inside.ts';
export { lostSources, openSource, readSource, type SourceStream } from './read-source.ts';
export * from './repair-session.ts';
export type { Content } from './replace-file.ts';
export { safeFolderName, slug } from './safe-name.ts';
export * from './save.ts';
export { type StoredVersion, sessionVersions } from './session-versions.ts';
export type { SettledFile } from './settle-detector.ts';
export { sha256, sha256OfFile } from './sha256.ts';
export { type UnzipOptions, type UnzippedSession, unzipSession } from './unzip-session.ts';
export { type FolderWatch, type SeenLog, type WatchOptions, watchFolder } from './watch-folder.ts';
export { writeAtomic } from './write-atomic.ts';
export { type ZippedSession, zipSession } from './zip-session.ts';
