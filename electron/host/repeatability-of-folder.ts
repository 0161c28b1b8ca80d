import type { RequestContext, RequestOutput } from '../../core/contract/index.ts';
import { ok, type Result } from '../../core/result/index.ts';
import { sessionLedger } from '../../core/session/index.ts';
import { lookIntoFolder } from './look-into-folder.ts';

/** How well pulls repeated in the session of a folder, from its own pulls alone. The folder is only looked at. */
export async function repeatabilityOfFolder(
  folder: string,
  setting: { readonly now: string; readonly version: string },
  context: RequestContext,
): Promise<Result<RequestOutput<'sessions.repeatability'>>> {
  const looked = await lookIntoFolder(folder, setting, context);
  if (!looked.ok) return looked;
  const { session, pulls } = looked.value;
  return ok({
    sessionId: session.id,
    name: session.name,
    carName: session.car.name,
    createdAt: session.createdAt,
    repeatability: sessionLedger(session, pulls, null).repeatability,
  });
}
