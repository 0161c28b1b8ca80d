import { useState } from 'react';
import type { RollWay } from '../../core/contract/index.ts';
import type { RunRecord } from '../../core/session/index.ts';
import { useAnswer } from '../hooks/use-answer.ts';
import { useSession } from '../hooks/use-session.tsx';

/** What was said of the rolls of one run. */
type Said = { readonly runId: string; readonly ways: readonly RollWay[] };

/** Runs of the session with rolls in neutral, the one that is looked at, and the road load it gives. */
export function useCoastDown() {
  const { snapshot } = useSession();
  const [chosen, choose] = useState<string | null>(null);
  const [said, say] = useState<Said | null>(null);
  const [revision, folder] = [snapshot?.revision ?? 0, snapshot?.folder ?? ''];
  const found = useAnswer('coastDown.runs', snapshot ? {} : null, revision, folder);
  const runs = (found.value?.runs ?? []).flatMap(({ runId, rolls }) => {
    const record: RunRecord | undefined = snapshot?.runs.find((r) => r.record.id === runId)?.record;
    return record ? [{ record, rolls }] : [];
  });
  // A log that was driven for it holds more rolls than one in which the car once ran out.
  const most = runs.reduce<(typeof runs)[number] | null>(
    (best, run) => (best && best.rolls >= run.rolls ? best : run),
    null,
  );
  const run = runs.find((r) => r.record.id === chosen) ?? most;
  const runId = run?.record.id ?? null;
  const ways = said?.runId === runId ? [...said.ways] : [];
  const fit = useAnswer(
    'coastDown.fit',
    runId === null ? null : { runId, ways },
    revision,
    `${folder}|${runId}`,
  );
  return {
    runs,
    run,
    choose,
    setWays: (next: readonly RollWay[]) => runId !== null && say({ runId, ways: next }),
    answer: fit.value,
    problems: found.problems ?? fit.problems,
    isBusy: found.isBusy || fit.isBusy,
  };
}
