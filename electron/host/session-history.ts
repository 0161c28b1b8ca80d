import type { RequestOutput, SessionVersion } from '../../core/contract/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { differingFields, type Session, type SessionState, sameJson } from '../../core/session/index.ts';
import { type StoredVersion, sessionVersions } from '../store/index.ts';

/** Earlier versions of the session in `folder`, told beside the present one. */
export async function listVersions(
  folder: string,
  current: Session,
): Promise<Result<RequestOutput<'history.list'>>> {
  const stored = await sessionVersions(folder);
  if (!stored.ok) return stored;
  const versions = stored.value.map((version, index) => {
    const older = stored.value.slice(index + 1).find((other) => other.session !== null);
    return described(version, older?.session ?? null, current);
  });
  return ok({ versions });
}

/**
 * One version with what differs from the present.
 *
 * Errors: store/no-version where the list does not hold it; store/version-unusable.
 */
export async function readVersionOf(
  folder: string,
  state: SessionState,
  file: string,
): Promise<Result<RequestOutput<'history.read'>>> {
  const stored = await sessionVersions(folder);
  if (!stored.ok) return stored;
  // Found in the list and never joined to a path: what a caller names is only compared.
  const index = stored.value.findIndex((one) => one.file === file);
  const version = stored.value[index];
  if (!version) return fail({ code: 'store/no-version', facts: { file } });
  if (!version.session) {
    return fail({ code: 'store/version-unusable', facts: { file, why: version.unusable } });
  }
  const { session } = version;
  const older = stored.value.slice(index + 1).find((other) => other.session !== null);
  const wanted = new Set(session.ledger.flatMap((entry) => entry.runs.map((run) => run.runId)));
  return ok({
    version: described(version, older?.session ?? null, state.session),
    session,
    differs: differingFields(session, state.session),
    missingRuns: [...wanted].filter((id) => !(id in state.runs)),
  });
}

function described(version: StoredVersion, older: Session | null, current: Session): SessionVersion {
  const { session, ...facts } = version;
  return {
    ...facts,
    isCurrent: session !== null && sameJson(session, current),
    entries: session?.ledger.length ?? 0,
    name: session?.name ?? '',
    changed: session && older ? differingFields(older, session) : [],
  };
}
