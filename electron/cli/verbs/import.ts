import { resolve } from 'node:path';
import type { RunSummary } from '../../../core/contract/index.ts';
import { fail, ok, type Problem, type Result } from '../../../core/result/index.ts';
import { problemText } from '../../../core/words/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import { entryNumbered } from '../entry-numbered.ts';
import { type Answer, table, terminalShow } from '../output.ts';
import { withSession } from '../session-host.ts';

const usage = 'onechange import FOLDER LOG... [--entry NUMBER] [--json]';

type Imported = { readonly file: string; readonly run: RunSummary; readonly duplicateOf: string | null };

function describe({ run, duplicateOf }: Imported): string {
  if (duplicateOf !== null) return 'already here, nothing added';
  const [problem] = run.problems;
  if (problem) return problemText(problem, terminalShow).message;
  const counted = run.pulls.filter((p) => p.counts).length;
  return `${run.pulls.length} pulls, ${counted} count`;
}

export const verb = {
  usage,
  what: 'Copies logs into a session, byte for byte. They join entry NUMBER, else the last one of the ledger.',
  options: { entry: 'one' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const [folder, ...logs] = args.positionals;
    if (folder === undefined || logs.length === 0) {
      const what = folder === undefined ? 'A session folder' : 'A log';
      return fail({ code: 'terminal/argument-missing', facts: { what, usage } });
    }
    return withSession(folder, async (host, { session }) => {
      const number = singleValue(args, 'entry') ?? `${session.ledger.length - 1}`;
      const entry = entryNumbered(session, number);
      if (!entry.ok) return entry;
      const imported: Imported[] = [];
      const failed: Problem[] = [];
      for (const file of logs) {
        const done = await host.ask('runs.import', { path: resolve(file), entryId: entry.value.id });
        if (done.ok) imported.push({ file, run: done.value.run, duplicateOf: done.value.duplicateOf });
        else failed.push(...done.problems.map((p) => named(p, file)));
        // A file that is no log stops none of the others; what was taken before the rest stays too.
        if (!done.ok && !done.problems.every((p) => p.code.startsWith('log/'))) break;
      }
      const [first, ...more] = failed;
      if (first && imported.length === 0) return fail(first, ...more);
      const rows = imported.map((i) => [i.file, i.run.record.id, describe(i)]);
      return ok({
        text: table([['log', 'run', ''], ...rows]),
        failed: first ? [first, ...more] : null,
        json: {
          imported: imported.map(({ file, run, duplicateOf }) => ({
            file,
            runId: run.record.id,
            sha256: run.record.sha256,
            duplicateOf,
            pulls: run.pulls.length,
            counting: run.pulls.filter((p) => p.counts).length,
            problems: run.problems.map((p) => ({ code: p.code, text: problemText(p, terminalShow).message })),
          })),
        },
      });
    });
  },
} as const;

function named(problem: Problem, file: string): Problem {
  return problem.where?.file ? problem : ({ ...problem, where: { ...problem.where, file } } as Problem);
}
