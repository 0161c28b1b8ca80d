import type { RunSummary } from '../../core/contract/index.ts';
import { useAnswer } from '../hooks/use-answer.ts';
import { shownColumns } from './mapping-draft.ts';

/** How many columns one question may name, by the contract. */
const mostColumns = 200;
/** Long enough for three samples of a slow logger. */
const window_s = 2;
const shown = 3;

/** The first values of each column as the program has them, SI for what has a quantity. */
export function usePreview(run: RunSummary, revision: number) {
  const columns = shownColumns(run).slice(0, mostColumns);
  const start = run.pulls[0]?.start_s ?? null;
  const answer = useAnswer(
    'runs.channels',
    {
      runId: run.record.id,
      columns: columns.map((c) => c.column),
      // Values at the start of a pull tell more than a car that stands still.
      from_s: start,
      to_s: start === null ? null : start + window_s,
      most: 2000,
    },
    revision,
    run.record.id,
  );
  const of = (column: string) =>
    answer.value?.channels
      .find((c) => c.column === column)
      ?.values.slice(0, shown)
      .filter((v) => v !== null) ?? [];
  return { of, problems: answer.problems };
}
