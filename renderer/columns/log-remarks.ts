import type { RunSummary } from '../../core/contract/index.ts';
import type { Note, Problem } from '../../core/result/index.ts';

/** One thing that was found in logs, each name once. */
export type LogRemark = {
  readonly logs: readonly string[];
  readonly text: string;
  /** How to mend it; null for what needs no mending. */
  readonly remedy: string | null;
};

type Wording = {
  readonly note: (note: Note) => string;
  readonly problem: (problem: Problem) => { readonly message: string; readonly remedy: string };
};

/** What reading these logs found, what is wrong first; the same of several logs is told once. */
export function logRemarks(runs: readonly RunSummary[], { note, problem }: Wording): LogRemark[] {
  const found = new Map<string, { logs: string[]; text: string; remedy: string | null }>();
  const add = (log: string, text: string, remedy: string | null) => {
    const told = found.get(text) ?? { logs: [], text, remedy };
    if (!told.logs.includes(log)) told.logs.push(log);
    found.set(text, told);
  };
  for (const { record, problems } of runs) {
    for (const p of problems) {
      // The log is named in front of the remark.
      const { file: _, ...where } = p.where ?? {};
      const said = problem({ ...p, where });
      add(record.name, said.message, said.remedy);
    }
  }
  for (const { record, warnings } of runs) for (const w of warnings) add(record.name, note(w), null);
  return [...found.values()].filter((r) => r.text !== '');
}
