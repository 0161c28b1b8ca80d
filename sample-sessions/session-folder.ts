import { createHash } from 'node:crypto';
import { type CarInput, RunRecordSchema, SessionSchema, type SetupInput } from '../core/session/index.ts';
import { controlTables, lastSparkChange } from './simulation/control-tables.ts';
import type { Chapter } from './simulation/story.ts';

const folder = 'fenmoor-hatch';
/** The invented day begins here; an entry follows every 20 minutes. */
const morning = Date.UTC(2027, 2, 14, 9, 0);
const minute = 60_000;
/** When the folder was first opened, in the names of the second copies that the program made then. */
const firstOpened = '20261126T012804Z';

const at = (minutes: number) => new Date(morning + minutes * minute).toISOString();
const json = (value: unknown) => `${JSON.stringify(value, null, 2)}\n`;

/**
 * The session folder of the invented day, written through the program's own schemas, so that a schema that moves
 * on leaves no stale sample behind: the generator's test fails until it is made again.
 */
export function sessionFolder(
  story: readonly Chapter[],
  logs: ReadonlyMap<string, string>,
  asTyped: { readonly car: CarInput; readonly setup: SetupInput; readonly conditions: object },
): ReadonlyMap<string, string> {
  const out = new Map<string, string>();
  /** A file that the program may change, with the second copy that it keeps of its first version. */
  const putKept = (path: string, stem: string, text: string) => {
    out.set(`${path}/${stem}.json`, text);
    out.set(`${path}/history/${stem}-r000001-${firstOpened}-${hashOf(text).slice(0, 12)}.json`, text);
  };
  const lastSpark = story.findLast((chapter) => chapter.kind === 'spark');
  const ledger = story.map((chapter, index) => ({
    id: chapter.id,
    kind: chapter.kind,
    change: chapter.change && {
      ...chapter.change,
      ...(chapter === lastSpark ? { table: lastSparkChange(at(20 * index)) } : {}),
    },
    runs: chapter.files.map((file) => ({ runId: runIdOf(file.name) })),
    note: chapter.note,
    createdAt: at(20 * index),
  }));
  const session = SessionSchema.parse({
    schemaVersion: 1,
    id: 'fenmoor-hatch',
    name: 'Fenmoor hatch',
    createdAt: at(0),
    ...asTyped,
    limits: { mapCeiling_kPa: 285, boostCeiling_kPa: 120, fluidPressureLowest_kPa: 800 },
    ledger,
    tables: controlTables(at(0)),
    note: 'Invented: the car, the day and every number in the logs. Level closed test oval, third gear.',
    isInvented: true,
  });
  putKept(folder, 'session', json(session));

  story.forEach((chapter, index) => {
    chapter.files.forEach((file, i) => {
      const text = logs.get(`logs/${file.name}`);
      if (text === undefined) throw new Error(`no log ${file.name}`);
      const id = runIdOf(file.name);
      const record = RunRecordSchema.parse({
        schemaVersion: 1,
        id,
        name: file.name,
        importedAt: at(20 * index + 4 + 4 * i),
        size_bytes: Buffer.byteLength(text),
        sha256: hashOf(text),
      });
      out.set(`${folder}/runs/${id}/source.csv`, text);
      putKept(`${folder}/runs/${id}`, 'run', json(record));
    });
  });
  return out;
}

function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** A run is called after its file, so that a person finds their way in the folder. */
function runIdOf(fileName: string): string {
  return fileName.replace(/\.csv$/, '');
}
