import { basename } from 'node:path';
import type { SoFar } from '../../core/contract/index.ts';
import { correctionsFor, fileColumns, readLog } from '../../core/log/index.ts';
import { analyseLog } from '../../core/session/index.ts';
import { nodeFileSystem } from '../store/index.ts';
import type { PreferenceKeeper } from './preference-keeper.ts';
import type { SessionDesk } from './session-desk.ts';

/** Longer logs are only told by name while they grow: a look is taken between the answers and must not hold them up. */
const longestLook_bytes = 4_000_000;
const lineEnd = 10;

/**
 * What a log shows while it is still written: its whole lines, read with the session's car and air, and with the
 * corrections kept for its columns. Nothing is copied or kept.
 *
 * @returns  null where it can't be read yet
 */
export async function lookAtLog(
  desk: SessionDesk | null,
  preferences: PreferenceKeeper,
  path: string,
): Promise<SoFar | null> {
  if (!desk) return null;
  const all = await nodeFileSystem.readFile(path, longestLook_bytes);
  const bytes = all.subarray(0, all.lastIndexOf(lineEnd) + 1);
  const file = basename(path);
  const asFound = readLog(bytes, { file, mapping: [] });
  if (!asFound.ok) return null;
  const { columnProfiles } = await preferences.get();
  const columns = correctionsFor(columnProfiles, fileColumns(asFound.value.channels));
  const read = columns.length > 0 ? readLog(bytes, { file, mapping: [...columns] }) : asFound;
  if (!read.ok) return null;
  const { car, conditions } = desk.state().session;
  const record = { columns: [...columns], pullEdits: [] };
  const { log, pulls } = analyseLog(read.value, { runId: 'growing', record, car, conditions });
  const full = pulls.filter((p) => p.pull.complete);
  const powers = Array.from(full.at(-1)?.power?.wheelPower ?? []).filter(Number.isFinite);
  return {
    duration_s: (log.time.at(-1) ?? 0) - (log.time[0] ?? 0),
    pulls: full.length,
    peakPower: powers.length > 0 ? Math.max(...powers) : null,
  };
}
