import { resolve } from 'node:path';
import type { ShownConflict } from '../../../core/contract/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { conflictPlace, conflictValue, noteText } from '../../../core/words/index.ts';
import type { Arguments } from '../args.ts';
import { type Answer, terminalShow } from '../output.ts';
import { type TerminalHost, withSession } from '../session-host.ts';

const usage = 'onechange merge FOLDER [COPY] [--theirs NUMBER...] [--mine NUMBER...] [--json]';

export const verb = {
  usage,
  what: 'Brings a copy of a session (a folder or a zip) into it. What both changed differently is listed by number; --theirs and --mine settle it.',
  options: { theirs: 'many', mine: 'many' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const [folder, copy] = args.positionals;
    if (folder === undefined) {
      return fail({ code: 'terminal/argument-missing', facts: { what: 'A session folder', usage } });
    }
    return withSession(folder, async (host) => {
      const merged = copy === undefined ? null : await host.ask('session.merge', { path: resolve(copy) });
      if (merged && !merged.ok) return merged;
      const settled = await settle(host, args);
      if (!settled.ok) return settled;
      const listed = await host.ask('merge.list', {});
      if (!listed.ok) return listed;
      const { conflicts } = listed.value;
      const report = merged?.value.report;
      const snapshot = await host.ask('session.get', {});
      const session = snapshot.ok ? snapshot.value : null;
      const lines = conflicts.map((one, i) => `${i + 1}. ${told(one, session)}`);
      return ok({
        text: [
          ...(report ? [`Runs taken over: ${report.newRuns.map((r) => r.name).join(', ') || 'none'}.`] : []),
          ...(report?.notices ?? []).map((note) => noteText(note, terminalShow)),
          lines.length === 0
            ? 'Nothing was changed in two ways.'
            : 'Changed in two ways; both values are kept:',
          ...lines,
        ].join('\n'),
        json: { newRuns: report?.newRuns ?? [], conflicts },
      });
    });
  },
} as const;

/** Numbers are those of the list, which a settled conflict does not leave. */
async function settle(host: TerminalHost, args: Arguments): Promise<Result<void>> {
  const listed = await host.ask('merge.list', {});
  if (!listed.ok) return listed;
  const { conflicts } = listed.value;
  for (const take of ['mine', 'theirs'] as const) {
    for (const number of args.values.get(take) ?? []) {
      const conflict = /^\d+$/.test(number) ? conflicts[Number(number) - 1] : undefined;
      if (!conflict) {
        const choices = conflicts.length === 0 ? 'none' : `1 to ${conflicts.length}`;
        return fail({
          code: 'terminal/not-a-choice',
          facts: { option: `--${take}`, value: number, choices },
        });
      }
      const { record, index } = conflict;
      const done = await host.ask('merge.settle', { record, index, take });
      if (!done.ok) return done;
    }
  }
  return ok(undefined);
}

const stands = {
  mine: 'here stands',
  theirs: 'the copy’s stands',
  other: 'edited since',
  gone: 'its place is gone',
};

function told(conflict: ShownConflict, snapshot: Parameters<typeof conflictPlace>[1]): string {
  const place = conflictPlace(conflict, snapshot, terminalShow);
  if (conflict.kind === 'order') return `${place}: both added to it; all of it is there, this copy’s first`;
  const [mine, theirs] = [conflict.mine, conflict.theirs].map((value) => conflictValue(value, terminalShow));
  return `${place}\n     here: ${mine}\n     copy: ${theirs}\n     now: ${stands[conflict.stands]}`;
}
