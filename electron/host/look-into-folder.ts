import type { EntryPulls } from '../../core/compare/index.ts';
import type { RequestContext } from '../../core/contract/index.ts';
import { ok, type Result } from '../../core/result/index.ts';
import { entryPulls, type Session } from '../../core/session/index.ts';
import { closeSession, openSession } from '../store/index.ts';
import { createAnalyst } from './analyst.ts';

/** The session of another folder with its pulls. The folder is only looked at: no lock, nothing written. */
export async function lookIntoFolder(
  folder: string,
  setting: { readonly now: string; readonly version: string },
  context: RequestContext,
): Promise<Result<{ readonly session: Session; readonly pulls: readonly EntryPulls[] }>> {
  const opened = await openSession(folder, { now: setting.now, readOnly: true });
  if (!opened.ok) return opened;
  try {
    const { session, runs } = opened.value;
    const found = await createAnalyst(opened.value, setting.version).all(context);
    const analyses = new Map([...found].flatMap(([id, one]) => (one.ok ? [[id, one.value] as const] : [])));
    const records = Object.fromEntries([...runs].map(([id, run]) => [id, run.record]));
    return ok({ session, pulls: entryPulls(session, records, analyses) });
  } finally {
    await closeSession(opened.value);
  }
}
