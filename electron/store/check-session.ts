import { join } from 'node:path';
import { fail, type Note, ok, type Result } from '../../core/result/index.ts';
import { IdSchema, readSession, type Session } from '../../core/session/index.ts';
import { readCacheFile } from './channel-cache.ts';
import { attempt } from './disk-problem.ts';
import { type Loaded, loadDocument } from './document.ts';
import type { Entry, FileSystem } from './file-system.ts';
import { isStillThere, listIfThere, type Place, readVersion, versionsOf } from './history.ts';
import {
  cacheName,
  cachePath,
  folderNames,
  runFolder,
  runPlace,
  sessionPlace,
  shownSource,
  sourceName,
  sourcePath,
} from './layout.ts';
import { isLockFile, lockHolder } from './lock.ts';
import { mergeRecords } from './merge-records.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { missingRuns } from './open-session.ts';
import { nodeProcessView, type ProcessView } from './process-view.ts';
import { readRunRecord } from './read-run-record.ts';
import { isUnfinished } from './replace-file.ts';
import { sha256OfFile } from './sha256.ts';

/** What an integrity check found. */
export type CheckReport = {
  readonly folder: string;
  /** Every file is what was saved or imported; remarks do not count against it. */
  readonly isSound: boolean;
  readonly runs: number;
  readonly filesChecked: number;
  readonly bytesChecked: number;
  /** Damaged or missing, with what can be done. */
  readonly damage: readonly Note[];
  /** Worth saying, no damage. */
  readonly remarks: readonly Note[];
};

type Findings = {
  runs: number;
  filesChecked: number;
  bytesChecked: number;
  readonly damage: Note[];
  remarks: Note[];
};

const knownAtTop = new Set<string>(['session.json', ...Object.values(folderNames)]);
const knownInRun = new Set<string>(['run.json', sourceName, cacheName, folderNames.history]);

/**
 * Reads every file of a session and holds it against its hash or seal: session.json, each run.json and log, each
 * version in history, each cache. Changes nothing.
 *
 * Errors: store/not-a-session, session/newer-version, disk problems.
 */
export function checkSession(
  folder: string,
  options: {
    readonly fs?: FileSystem;
    readonly view?: ProcessView;
    readonly progress?: (share: number) => void;
  } = {},
): Promise<Result<CheckReport>> {
  const { fs = nodeFileSystem, view = nodeProcessView, progress } = options;
  return attempt(folder, async () => {
    const writerBefore = await lockHolder(folder, fs, view);
    const findings: Findings = { runs: 0, filesChecked: 0, bytesChecked: 0, damage: [], remarks: [] };
    const top = await fs.list(folder);
    const place = sessionPlace(folder);
    const loaded = await loadDocument(place, (json) => readSession(json, place.shown), fs);
    if (!loaded.ok) {
      const { code } = loaded.problems[0];
      if (code === 'store/missing') return fail({ code: 'store/not-a-session', facts: { path: folder } });
      if (code !== 'store/damaged') return loaded;
      findings.damage.push({ code: 'store/file-damaged', facts: { file: place.shown, repair: 'none' } });
    } else {
      judgeDocument(place, loaded.value, findings);
    }
    await checkHistory(place, loaded.ok ? loaded.value.saved.fingerprint : null, findings, fs);
    await checkMergeRecords(folder, findings, fs);
    for (const entry of top) {
      if (isUnfinished(entry.name)) {
        findings.remarks.push({ code: 'store/unfinished-found', facts: { file: entry.name } });
      } else if (!knownAtTop.has(entry.name) && !isLockFile(entry.name)) {
        findings.remarks.push({ code: 'store/unknown-file', facts: { file: entry.name } });
      }
    }
    const known = new Set<string>();
    const entries = await listIfThere(join(folder, folderNames.runs), fs);
    for (const [index, entry] of entries.entries()) {
      if (await checkRun(folder, entry, findings, fs)) known.add(entry.name);
      progress?.((index + 1) / entries.length);
    }
    if (loaded.ok) checkLedger(loaded.value.value.session, known, findings);
    // Another program is writing there: what is unfinished is its own business and will be finished.
    if (writerBefore ?? (await lockHolder(folder, fs, view))) {
      findings.remarks = findings.remarks.filter(({ code }) => code !== 'store/unfinished-found');
    }
    return ok({ folder, isSound: findings.damage.length === 0, ...findings });
  });
}

function judgeDocument<T>(place: Place, { condition, fields, bytes }: Loaded<T>, findings: Findings): void {
  const file = place.shown;
  findings.filesChecked++;
  findings.bytesChecked += bytes.length;
  if (condition === 'damaged') {
    findings.damage.push({ code: 'store/file-damaged', facts: { file, repair: 'history' } });
  } else if (condition === 'missing') {
    findings.damage.push({ code: 'store/file-missing', facts: { file, repair: 'history' } });
  } else if (condition === 'changed-outside') {
    findings.remarks.push({ code: 'store/changed-outside', facts: { file, fields } });
  }
}

async function checkHistory(
  place: Place,
  fingerprint: string | null,
  findings: Findings,
  fs: FileSystem,
): Promise<void> {
  const versions = await versionsOf(place, fs);
  const shownFolder = `${place.shown.slice(0, place.shown.lastIndexOf('/') + 1)}${folderNames.history}`;
  for (const { name } of await listIfThere(place.history, fs)) {
    if (!isUnfinished(name)) continue;
    findings.remarks.push({ code: 'store/unfinished-found', facts: { file: `${shownFolder}/${name}` } });
  }
  for (const version of versions) {
    const bytes = await readVersion(place, version, fs);
    if (!bytes && !(await isStillThere(place, version, fs))) continue;
    findings.filesChecked++;
    findings.bytesChecked += bytes?.length ?? 0;
    if (bytes) continue;
    const facts = { file: `${shownFolder}/${version.name}`, repair: 'set-aside' } as const;
    findings.damage.push({ code: 'store/file-damaged', facts });
  }
  if (fingerprint !== null && !versions.some((version) => fingerprint.startsWith(version.hash))) {
    findings.remarks.push({ code: 'store/no-second-copy', facts: { file: place.shown } });
  }
}

async function checkMergeRecords(folder: string, findings: Findings, fs: FileSystem): Promise<void> {
  const records = await mergeRecords(folder, fs);
  for (const { file, isDamaged } of records.ok ? records.value : []) {
    findings.filesChecked++;
    if (isDamaged) findings.damage.push({ code: 'store/file-damaged', facts: { file, repair: 'set-aside' } });
  }
}

/** True where the entry is a run. */
async function checkRun(
  folder: string,
  { name, kind }: Entry,
  findings: Findings,
  fs: FileSystem,
): Promise<boolean> {
  if (isUnfinished(name)) {
    findings.remarks.push({ code: 'store/unfinished-found', facts: { file: `runs/${name}` } });
    return false;
  }
  const entries = kind === 'folder' ? await fs.list(runFolder(folder, name)) : [];
  const hasSource = entries.some((entry) => entry.name === sourceName && entry.kind === 'file');
  const place = runPlace(folder, name);
  const loaded = await loadDocument(place, (json) => readRunRecord(json, place.shown), fs);
  const isNoRun = !loaded.ok && loaded.problems[0].code === 'store/missing' && !hasSource;
  if (kind !== 'folder' || !IdSchema.safeParse(name).success || isNoRun) {
    findings.remarks.push({ code: 'store/unknown-file', facts: { file: `runs/${name}` } });
    return false;
  }
  findings.runs++;
  for (const entry of entries) {
    const file = `runs/${name}/${entry.name}`;
    if (isUnfinished(entry.name)) findings.remarks.push({ code: 'store/unfinished-found', facts: { file } });
    else if (!knownInRun.has(entry.name)) {
      findings.remarks.push({ code: 'store/unknown-file', facts: { file } });
    }
  }
  if (loaded.ok) judgeDocument(place, loaded.value, findings);
  else if (loaded.problems[0].code === 'session/newer-version') {
    findings.remarks.push({ code: 'store/newer-run', facts: { file: place.shown } });
  } else {
    const repair = hasSource ? 'from-log' : 'none';
    findings.damage.push({ code: 'store/file-damaged', facts: { file: place.shown, repair } });
  }
  await checkHistory(place, loaded.ok ? loaded.value.saved.fingerprint : null, findings, fs);
  await checkSource(folder, name, hasSource, loaded.ok ? loaded.value.value.sha256 : null, findings, fs);
  if (entries.some((entry) => entry.name === cacheName)) {
    findings.filesChecked++;
    if ((await readCacheFile(cachePath(folder, name), fs)) === 'damaged') {
      findings.remarks.push({ code: 'store/cache-unusable', facts: { file: `runs/${name}/${cacheName}` } });
    }
  }
  return true;
}

async function checkSource(
  folder: string,
  runId: string,
  hasSource: boolean,
  expected: string | null,
  findings: Findings,
  fs: FileSystem,
): Promise<void> {
  const facts = { file: shownSource(runId), repair: 'import-again' } as const;
  if (!hasSource) {
    findings.damage.push({ code: 'store/file-missing', facts });
    return;
  }
  const found = await attempt(facts.file, async () => ok(await sha256OfFile(sourcePath(folder, runId), fs)));
  findings.filesChecked++;
  findings.bytesChecked += found.ok ? found.value.size : 0;
  const isDamaged = !found.ok || (expected !== null && found.value.sha256 !== expected);
  if (isDamaged) findings.damage.push({ code: 'store/file-damaged', facts });
}

function checkLedger(session: Session, known: ReadonlySet<string>, findings: Findings): void {
  for (const file of missingRuns(session, known)) {
    findings.damage.push({ code: 'store/file-missing', facts: { file, repair: 'import-again' } });
  }
}
