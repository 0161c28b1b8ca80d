import { useEffect, useMemo, useState } from 'react';
import { fromSamples, type Snapshot } from '../../core/contract/index.ts';
import { type FormulaParser, type Log, loadFormulaParser } from '../../core/log/index.ts';
import { afterPaint } from '../hooks/after-paint.ts';
import { useAnswer } from '../hooks/use-answer.ts';

/** Samples of one pull, whole: thinned channels would no longer stand side by side. */
const wholePull = 200_000;
/** How many columns one question may name, by the contract. */
const mostColumns = 200;

/** A pull as a log to try formulas on, from the newest run that has one; null while it is fetched or there is none. */
export function useTrialLog(snapshot: Snapshot): { readonly log: Log | null; readonly name: string | null } {
  const run = snapshot.runs.findLast((r) => r.pulls.length > 0) ?? null;
  const pull = run?.pulls[0] ?? null;
  const made = new Set(snapshot.session.derivedChannels.map((d) => d.name));
  const columns = (run?.columns ?? []).filter((c) => !made.has(c.column)).slice(0, mostColumns);
  const answer = useAnswer(
    'runs.channels',
    run && pull
      ? {
          runId: run.record.id,
          columns: columns.map((c) => c.column),
          from_s: pull.start_s,
          to_s: pull.end_s,
          most: wholePull,
        }
      : null,
    snapshot.revision,
    run?.record.id ?? '',
  );
  const { value } = answer;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the columns follow from the run that was asked about
  const log = useMemo((): Log | null => {
    const [first] = value?.channels ?? [];
    if (!value || !first || !run) return null;
    const time = fromSamples(first.time);
    return {
      file: run.record.name,
      time,
      channels: value.channels.flatMap(({ column, values }) => {
        const summary = columns.find((c) => c.column === column);
        return summary
          ? [{ ...summary, values: fromSamples(values), flags: new Uint8Array(values.length) }]
          : [];
      }),
      segments: [{ from: 0, to: time.length }],
      warnings: [],
      style: {
        encoding: 'utf-8',
        delimiter: ',',
        decimal: '.',
        headerLine: 1,
        firstDataLine: 2,
        timeFormat: 's',
      },
    };
  }, [value]);
  return { log, name: run?.record.name ?? null };
}

/** The formula parser, fetched when the first formula is looked at. */
export function useFormulaParser(): FormulaParser | null {
  const [parser, setParser] = useState<FormulaParser | null>(null);
  useEffect(() => {
    let isCurrent = true;
    // It takes a tenth of a second to start, and the dialog need not wait for it.
    const callOff = afterPaint(() => {
      void loadFormulaParser().then((loaded) => isCurrent && setParser(() => loaded));
    });
    return () => {
      isCurrent = false;
      callOff();
    };
  }, []);
  return parser;
}
