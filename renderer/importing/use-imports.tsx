import { createContext, type ReactNode, useCallback, useContext, useMemo, useState } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useHost } from '../host/HostProvider.tsx';
import type { Incoming } from './incoming.ts';

/** One log and the entry that its pulls belong to; null keeps it in the session without one. */
export type ImportTask = { readonly file: Incoming; readonly entryId: string | null };

export type ImportJob = { readonly name: string; readonly share: number | null; readonly cancel: () => void };

/** The log that is being read, with those that wait behind it. */
export type ImportProgress = { readonly job: ImportJob | null; readonly waiting: number };

type ImportAll = (tasks: readonly ImportTask[]) => Promise<void>;

// Two contexts: what shows progress is drawn anew with each step of it, what only starts an import is not.
const ProgressContext = createContext<ImportProgress | null>(null);
const ImportAllContext = createContext<ImportAll | null>(null);

/** Steps of progress follow each other as fast as the host reads; the bar moves ten times a second. */
const between_ms = 100;

/** Reads logs in one after the other, so that progress means something and cancel stops the rest. */
export function ImportsProvider({ children }: { children: ReactNode }) {
  const host = useHost();
  const { take, latest } = useSession();
  const { say, report } = useToasts();
  const { screens } = useWords();
  const [job, setJob] = useState<ImportJob | null>(null);
  const [waiting, setWaiting] = useState(0);

  const importAll = useCallback(
    async (tasks: readonly ImportTask[]) => {
      const abort = new AbortController();
      const cancel = () => abort.abort();
      // Another window may open another session meanwhile: the logs are not for that one.
      const folder = latest()?.folder;
      for (const [i, { file, entryId }] of tasks.entries()) {
        if (abort.signal.aborted) break;
        setWaiting(tasks.length - i - 1);
        setJob({ name: file.name, share: null, cancel });
        let told_ms = Number.NEGATIVE_INFINITY;
        const onProgress = (share: number) => {
          const now_ms = performance.now();
          if (now_ms - told_ms < between_ms) return;
          told_ms = now_ms;
          setJob({ name: file.name, share, cancel });
        };
        const answer =
          file instanceof File
            ? await host.upload(file, entryId, { signal: abort.signal, folder, onProgress })
            : await host.request(
                'runs.import',
                { path: file.path, entryId, folder },
                { signal: abort.signal },
              );
        if (!answer.ok) {
          report(answer.problems);
          continue;
        }
        if (latest()?.folder === folder) take(answer.value.snapshot);
        const { run, duplicateOf } = answer.value;
        if (run.problems.length > 0) report(run.problems);
        else if (duplicateOf !== null)
          say(screens.importing.duplicate(file.name, entriesOf(answer.value.snapshot, duplicateOf)));
        else say(screens.importing.imported(file.name, run.pulls.filter((p) => p.complete).length));
      }
      setJob(null);
      setWaiting(0);
    },
    [host, take, latest, say, report, screens],
  );

  const progress = useMemo(() => ({ job, waiting }), [job, waiting]);
  return (
    <ImportAllContext value={importAll}>
      <ProgressContext value={progress}>{children}</ProgressContext>
    </ImportAllContext>
  );
}

/** Numbers of the entries in which the pulls of a run count. */
function entriesOf({ session }: Snapshot, runId: string): number[] {
  return session.ledger.flatMap((e, n) => (e.runs.some((r) => r.runId === runId) ? [n] : []));
}

export function useImportProgress(): ImportProgress {
  const progress = useContext(ProgressContext);
  if (!progress) throw new Error('useImportProgress outside ImportsProvider');
  return progress;
}

/** Stays the same function while logs are read. */
export function useImportAll(): ImportAll {
  const importAll = useContext(ImportAllContext);
  if (!importAll) throw new Error('useImportAll outside ImportsProvider');
  return importAll;
}
