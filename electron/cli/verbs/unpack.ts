import { resolve } from 'node:path';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import type { Answer } from '../output.ts';
import { terminalHost } from '../session-host.ts';

const usage = 'onechange unpack FILE.zip [--into FOLDER] [--json]';

export const verb = {
  usage,
  what: 'Unpacks a zipped session into a new folder, and only if every file in it fits its checksum.',
  options: { into: 'one' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const [zip] = args.positionals;
    if (zip === undefined) {
      return fail({ code: 'terminal/argument-missing', facts: { what: 'A zip', usage } });
    }
    const into = singleValue(args, 'into');
    const host = terminalHost('terminal');
    try {
      const path = resolve(zip);
      const unpacked = await host.ask('sessions.unpack', {
        path,
        into: into === undefined ? null : resolve(into),
      });
      if (!unpacked.ok) return unpacked;
      const { folder, files, checked, sha256 } = unpacked.value;
      const held =
        checked > 0
          ? `${checked} of ${files} files fit the SHA-256 sums in the zip.`
          : `${files} files; the zip brings no list of sums, so only its own checksums were held.`;
      return ok({
        text: `Unpacked to ${folder}\n${held}\nSHA-256  ${sha256}  of the zip`,
        json: unpacked.value,
      });
    } finally {
      await host.close();
    }
  },
} as const;
