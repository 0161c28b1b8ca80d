import { fail, ok, type Result } from '../../../core/result/index.ts';
import type { RunRecord, Session, SessionEdit } from '../../../core/session/index.ts';
import { entryTitle } from '../../../core/words/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import { entryNumbered } from '../entry-numbered.ts';
import { type Answer, table, terminalShow } from '../output.ts';
import { withSession } from '../session-host.ts';

const usage = 'onechange move FOLDER LOG... --entry NUMBER [--json]';

/** The one run of this name or id, or what there is to choose from. */
function runNamed(runs: readonly RunRecord[], name: string): Result<RunRecord> {
  const [run, ...others] = runs.filter((r) => r.id === name || r.name === name);
  if (run && others.length === 0) return ok(run);
  const choices = runs.map((r) => `${r.id} (${r.name})`).join(', ');
  return fail({ code: 'terminal/not-a-choice', facts: { option: 'LOG', value: name, choices } });
}

/** Out of every other entry that holds it, into this one. */
function editsFor({ ledger }: Session, runId: string, to: string): SessionEdit[] {
  const holders = ledger.filter((e) => e.runs.some((r) => r.runId === runId));
  if (holders.length === 0) return [{ type: 'entry.takeRun', entryId: to, runId, from_s: null, to_s: null }];
  return holders
    .filter((e) => e.id !== to)
    .map((e): SessionEdit => ({ type: 'entry.moveRun', entryId: e.id, runId, to }));
}

export const verb = {
  usage,
  what: 'Moves logs of a session to entry NUMBER, with their columns, corrected pulls and notes. LOG is a name or run.',
  options: { entry: 'one' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const [folder, ...names] = args.positionals;
    const number = singleValue(args, 'entry');
    if (folder === undefined || names.length === 0 || number === undefined) {
      const what =
        folder === undefined ? 'A session folder' : names.length === 0 ? 'A log' : 'The number of an entry';
      return fail({ code: 'terminal/argument-missing', facts: { what, usage } });
    }
    return withSession(folder, async (host, { session, runs }) => {
      const entry = entryNumbered(session, number);
      if (!entry.ok) return entry;
      const moved: RunRecord[] = [];
      for (const name of new Set(names)) {
        const run = runNamed(
          runs.map((r) => r.record),
          name,
        );
        if (!run.ok) return run;
        moved.push(run.value);
      }
      const edits = moved.flatMap((run) => editsFor(session, run.id, entry.value.id));
      if (edits.length > 0) {
        const done = await host.ask('session.edit', { edits });
        if (!done.ok) return done;
      }
      const into = `${number} ${entryTitle(entry.value, terminalShow)}`;
      return ok({
        text: table([['log', 'run', 'now in'], ...moved.map((run) => [run.name, run.id, into])]),
        json: { entryId: entry.value.id, moved: moved.map((run) => ({ file: run.name, runId: run.id })) },
      });
    });
  },
} as const;
