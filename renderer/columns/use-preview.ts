import type { RunSummary } from '../../core/contract/index.ts';
import { useAnswer } from '../hooks/use-answer.ts';
import { shownColumns } from './mapping-draft.ts';

/** How many columns one question may name, by the contract. */
const mostColumns = 200;
/** Long enough for three samples of a slow logger. */
const window_s = 2;
const shown = 3;

/**
 * The first values of columns as the program has them, SI for what has a quantity.
 *
 * @param around  place of the column in the middle of those in sight: a log may have more than can be asked at once
 */
export function usePreview(run: RunSummary, revision: number, around: number) {
  // By hundreds, so that not every turn of the wheel asks again.
  const from = Math.max(0, 100 * Math.round(around / 100) - mostColumns / 2);
  const columns = shownColumns(run).slice(from, from + mostColumns);
  const start = run.pulls[0]?.start_s ?? null;
  const answer = useAnswer(
    'runs.channels',
    // A log that could not be read has names and no values.
    run.duration_s === null
      ? null
      : {
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
      ?.values.filter((v) => v !== null)
      .slice(0, shown) ?? [];
  return { of, problems: answer.problems };
}
