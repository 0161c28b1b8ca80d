/** Why an entry of a zip is refused. */
export type ZipFault = 'path' | 'link' | 'encrypted' | 'method' | 'twice' | 'overlap';

/** Why an earlier version can only be looked at in a text editor. */
export type VersionFault = 'damaged' | 'newer' | 'invalid';

/** What can go wrong between a session and the disk. `path` is shown to people, never opened again. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    'store/missing': { path: string };
    /** Something was to be written into a folder that is not there. */
    'store/no-folder': { path: string };
    'store/not-allowed': { path: string };
    /** The disk itself takes no writing, whoever asks. */
    'store/disk-read-only': { path: string };
    'store/disk-full': { path: string };
    /** The folder was removed, or its drive or share does not answer. */
    'store/folder-gone': { path: string };
    'store/name-too-long': { path: string };
    'store/disk-error': { path: string; code: string };
    /** A link or a device where a plain file belongs. */
    'store/not-a-plain-file': { path: string };
    'store/is-a-folder': { path: string };
    'store/too-large': { path: string };
    'store/bad-path': { path: string };
    'store/already-there': { path: string };
    'store/not-a-session': { path: string };
    /** Beyond repair: no usable earlier version either. */
    'store/damaged': { file: string };
    'store/locked': { host: string; pid: number; since: string };
    /** Another program took the session over while this one slept. */
    'store/lock-lost': Record<string, never>;
    'store/read-only': { folder: string };
    'store/closed': { folder: string };
    /** The file on disk is no longer the one this program wrote. */
    'store/changed-outside': { file: string };
    /** The log grew or was rewritten while it was copied. */
    'store/source-changing': { name: string };
    /** The card, drive or share on which the log lies failed while it was read. */
    'store/source-unreadable': { path: string; code: string };
    'store/upload-broken': { name: string };
    'store/source-missing': { runId: string; name: string };
    'store/source-damaged': { runId: string; name: string };
    'store/not-a-zip': { name: string };
    /** `entry` would be written outside the session, or is no plain file, or stands twice. */
    'store/zip-unsafe': { name: string; entry: string; why: ZipFault };
    'store/zip-too-large': { name: string };
    'store/zip-no-session': { name: string };
    'store/zip-damaged': { name: string; entry: string };
    /** Two sessions can be merged only where one is a copy of the other. */
    'store/other-session': { mine: string; theirs: string };
    'store/no-run': { runId: string };
    /** An earlier version that is not in the folder, or not any more. */
    'store/no-version': { file: string };
    'store/version-unusable': { file: string; why: VersionFault };
  }
}
