/**
 * Put back from history; made anew from the log; the log imported again by a person; only set aside; nothing.
 */
export type FileRepair = 'history' | 'from-log' | 'import-again' | 'set-aside' | 'none';

/** What opening, checking or importing found, and what was done about it. */
declare module '../result/result.ts' {
  interface NoteFacts {
    /** Edited by hand or by another program; taken as it stands. `fields` are the paths that differ. */
    'store/changed-outside': { file: string; fields: string[] };
    /** Damaged or unreadable; moved to `to`, and the version of `savedAt` put in its place. */
    'store/restored': { file: string; savedAt: string; to: string | null };
    'store/set-aside': { file: string; to: string };
    /** Damage that a read-only opening can only tell. */
    'store/damage-left': { file: string };
    'store/import-finished': { runId: string };
    'store/import-discarded': { name: string };
    'store/unfinished-removed': { files: number };
    'store/migrated': { from: number; to: number; original: string };
    'store/lock-taken-over': { host: string; pid: number; since: string };
    /** run.json was lost with all its versions; made anew from the log beside it. */
    'store/run-rebuilt': { runId: string };
    'store/newer-run': { file: string };
    'store/source-missing': { runId: string; name: string };
    /** A check's finding; `repair` is what `repairSession` or a person can do about it. */
    'store/file-damaged': { file: string; repair: FileRepair };
    'store/file-missing': { file: string; repair: FileRepair };
    'store/unfinished-found': { file: string };
    'store/unknown-file': { file: string };
    'store/no-second-copy': { file: string };
    'store/cache-unusable': { file: string };
  }
}
