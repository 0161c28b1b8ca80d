import type { RequestContext } from '../../core/contract/index.ts';
import { type HandoverSource, handoverSource } from '../../core/handover/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { lookIntoFolder } from './look-into-folder.ts';
import type { SessionDesk } from './session-desk.ts';

/**
 * The earlier visit that a summary is laid beside; null where none was named.
 *
 * Errors: handover/visit-is-this-one; those of opening a session.
 */
export async function lastVisit(
  desk: SessionDesk,
  folder: string | undefined,
  setting: { readonly now: string; readonly version: string },
  context: RequestContext,
): Promise<Result<HandoverSource | null>> {
  if (folder === undefined) return ok(null);
  const looked = await lookIntoFolder(folder, setting, context);
  if (!looked.ok) return looked;
  const { session, pulls } = looked.value;
  if (session.id === desk.state().session.id)
    return fail({ code: 'handover/visit-is-this-one', facts: { folder } });
  return ok(handoverSource(session, pulls));
}
