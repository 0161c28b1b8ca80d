import { resolve } from 'node:path';
import { fail, type Note, ok, type Problem, type Result } from '../../../core/result/index.ts';
import { noteText } from '../../../core/words/index.ts';
import { checkSession, repairSession } from '../../host/index.ts';
import type { Arguments } from '../args.ts';
import { type Answer, terminalShow } from '../output.ts';

const usage = 'onechange check FOLDER [--repair] [--json]';

export const verb = {
  usage,
  what: 'Holds every file of a session against its hash. --repair restores from history what can be restored.',
  options: { repair: 'flag' },
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
        remarks: remarks.map(said),
      },
    });
  },
} as const;
