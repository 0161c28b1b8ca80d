import { resolve } from 'node:path';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import { type Answer, terminalShow } from '../output.ts';
import { withSession } from '../session-host.ts';

const usage = 'onechange pack FOLDER [--out FILE.zip] [--json]';

export const verb = {
  usage,
  what: 'Packs a session into one zip with the checksum of every file. Without --out it goes beside the folder.',
  options: { out: 'one' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const [folder] = args.positionals;
    if (folder === undefined) {
      return fail({ code: 'terminal/argument-missing', facts: { what: 'A session folder', usage } });
    }
    const out = singleValue(args, 'out');
    return withSession(folder, async (host) => {
      const packed = await host.ask('session.pack', { path: out === undefined ? null : resolve(out) });
      if (!packed.ok) return packed;
      const { path, files, size_bytes, sha256 } = packed.value;
      const size = terminalShow.number(size_bytes / 1e6, 1);
      return ok({
        text: `Packed ${files} files, ${size} MB before packing, into ${path}\nSHA-256  ${sha256}`,
        json: packed.value,
      });
    });
  },
} as const;
