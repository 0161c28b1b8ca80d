import type { RequestContext, RequestOutput } from '../../core/contract/index.ts';
import { ok, type Result } from '../../core/result/index.ts';
import { entryPulls, sessionLedger } from '../../core/session/index.ts';
import { closeSession, openSession } from '../store/index.ts';
import { createAnalyst } from './analyst.ts';

/**
 * How well pulls repeated in the session of a folder, from its own pulls alone. The folder is only looked at: no
 * lock, nothing written.
 */
export async function repeatabilityOfFolder(
  folder: string,
  setting: { readonly now: string; readonly version: string },
  context: RequestContext,
): Promise<Result<RequestOutput<'sessions.repeatability'>>> {
  const opened = await openSession(folder, { now: setting.now, readOnly: true });
  if (!opened.ok) return opened;
  try {
    const { session, runs } = opened.value;
    const found = await createAnalyst(opened.value, setting.version).all(context);
    const analyses = new Map([...found].flatMap(([id, one]) => (one.ok ? [[id, one.value] as const] : [])));
    const records = Object.fromEntries([...runs].map(([id, run]) => [id, run.record]));
    return ok({
      sessionId: session.id,
      name: session.name,
      carName: session.car.name,
      createdAt: session.createdAt,
      repeatability: sessionLedger(session, entryPulls(session, records, analyses), null).repeatability,
    });
  } finally {
    await closeSession(opened.value);
  }
}
