import { resolve } from 'node:path';
import { fail, type Note, ok, type Problem, type Result } from '../../../core/result/index.ts';
import { noteText } from '../../../core/words/index.ts';
import { checkSession, repairSession } from '../../host/index.ts';
import type { Arguments } from '../args.ts';
import { type Answer, terminalShow } from '../output.ts';
import { withSession } from '../session-host.ts';

const usage = 'onechange check FOLDER [--repair | --accept] [--json]';

export const verb = {
  usage,
  what: 'Holds every file of a session against its hash. --repair restores from history what can be restored; --accept takes a session.json that was edited by hand and set aside after all, if it fits.',
  options: { repair: 'flag', accept: 'flag' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const folder = args.positionals[0];
    if (folder === undefined) {
      return fail({ code: 'terminal/argument-missing', facts: { what: 'A session folder', usage } });
    }
    const path = resolve(folder);
    const repaired = args.flags.has('repair')
      ? await repairSession(path, { now: new Date().toISOString() })
      : null;
    if (repaired && !repaired.ok) return repaired;
    const accepted = args.flags.has('accept') ? await acceptAside(path) : null;
    if (accepted && !accepted.ok) return accepted;
    const checked = await checkSession(path);
    if (!checked.ok) return checked;
    const { isSound, runs, filesChecked, bytesChecked, damage, remarks } = checked.value;
    const said = (note: Note) => ({ code: note.code, text: noteText(note, terminalShow) });
    const done = repaired?.value.done.map(said) ?? [];
    if (!isSound) {
      // Damage is an answer of its own kind: scripts must see it in the exit code.
      const problems = damage.map(
        (note): Problem => ({
          code: 'terminal/damaged',
          facts: { what: noteText(note, terminalShow) },
          where: note.where ?? { file: path },
        }),
      );
      return fail(...(problems as [Problem, ...Problem[]]));
    }
    return ok({
      text: [
        ...done.map((d) => d.text),
        ...(accepted ? [`Taken from ${accepted.value.file}: ${accepted.value.differs.join(', ')}.`] : []),
        `Sound: ${runs} runs, ${filesChecked} files, ${terminalShow.number(bytesChecked / 1e6, 1)} MB hold what was saved.`,
        ...remarks.map((n) => noteText(n, terminalShow)),
      ].join('\n'),
      json: {
        folder: path,
        sound: true,
        runs,
        filesChecked,
        bytesChecked,
        repaired: done,
        accepted: accepted?.value ?? null,
        remarks: remarks.map(said),
      },
    });
  },
} as const;

type Accepted = { readonly file: string; readonly differs: readonly string[] };

/** The last session.json that was set aside becomes the present one; what stood before is in history. */
function acceptAside(folder: string): Promise<Result<Accepted>> {
  return withSession(folder, async (host) => {
    const listed = await host.ask('history.list', {});
    if (!listed.ok) return listed;
    const file = listed.value.versions.find((v) => v.source === 'set-aside')?.file;
    if (file === undefined) {
      return fail({ code: 'store/no-version', facts: { file: 'set-aside/…-session.json' } });
    }
    const read = await host.ask('history.read', { file });
    if (!read.ok) return read;
    const restored = await host.ask('history.restore', { file });
    return restored.ok ? ok({ file, differs: read.value.differs }) : restored;
  });
}
