import { useMemo, useState } from 'react';
import type { CoastDown, RollWay } from '../../core/contract/index.ts';
import { useAnswer } from '../hooks/use-answer.ts';
import { useSession } from '../hooks/use-session.tsx';

/** What was said of the rolls of each run, by the run's id. */
type Said = Readonly<Record<string, readonly RollWay[]>>;

/** Runs of the session with rolls in neutral, those that are chosen, and the road load that they give together. */
export function useCoastDown() {
  const { snapshot } = useSession();
  const [chosenIds, choose] = useState<readonly string[] | null>(null);
  const [said, say] = useState<Said>({});
  const [revision, folder] = [snapshot?.revision ?? 0, snapshot?.folder ?? ''];
  const found = useAnswer('coastDown.runs', snapshot ? {} : null, revision, folder);
  const runs = (found.value?.runs ?? []).flatMap(({ runId, rolls }) => {
    const run = snapshot?.runs.find((r) => r.record.id === runId);
    return run ? [{ record: run.record, rolls, pulls: run.pulls.length }] : [];
  });
  const chosen = chosenIds ? runs.filter((r) => chosenIds.includes(r.record.id)) : drivenForIt(runs);
  const asked = chosen.map(({ record }) => ({ runId: record.id, ways: [...(said[record.id] ?? [])] }));
  const fit = useAnswer(
    'coastDown.fit',
    asked.length === 0 ? null : { runs: asked },
    revision,
    `${folder}|${asked.map((a) => a.runId).join()}`,
  );
  // What was said stands in the answer only after a round trip; a second key may come before.
  const answer = useMemo(() => fit.value && withWays(fit.value, said), [fit.value, said]);
  return {
    runs,
    chosen,
    setChosen: (runId: string, isChosen: boolean) =>
      choose(
        runs
          .map((r) => r.record.id)
          .filter((id) => (id === runId ? isChosen : chosen.some((c) => c.record.id === id))),
      ),
    setWays: (ways: Said) => say({ ...said, ...ways }),
    answer: asked.length === 0 ? null : answer,
    problems: found.problems ?? fit.problems,
    isBusy: found.isBusy || fit.isBusy,
  };
}

/** The rolls, each with the way that was said of it last. */
function withWays(answer: CoastDown, said: Said): CoastDown {
  const count = new Map<string, number>();
  const rolls = answer.rolls.map((roll) => {
    const at = count.get(roll.runId) ?? 0;
    count.set(roll.runId, at + 1);
    return { ...roll, way: said[roll.runId]?.[at] ?? roll.way };
  });
  return { ...answer, rolls };
}

/** A log without a pull was driven for its rolls; where none is, the one with most of them. */
function drivenForIt<R extends { readonly rolls: number; readonly pulls: number }>(runs: readonly R[]): R[] {
  const without = runs.filter((run) => run.pulls === 0);
  if (without.length > 0) return without;
  const most = Math.max(...runs.map((run) => run.rolls));
  return runs.filter((run) => run.rolls === most).slice(0, 1);
}
