import { fail, ok, type Result } from '../../../core/result/index.ts';
import { writeAtomic } from '../../host/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import type { Answer } from '../output.ts';
import { withSession } from '../session-host.ts';

const usage = 'onechange summary FOLDER --out FILE.html [--language en|de] [--date YYYY-MM-DD] [--json]';

export const verb = {
  usage,
  what: 'Writes the customer summary of a session as one self-contained HTML file.',
  options: { out: 'one', language: 'one', date: 'one' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const folder = args.positionals[0];
    const out = singleValue(args, 'out');
    if (folder === undefined || out === undefined) {
      const what = folder === undefined ? 'A session folder' : '--out FILE.html';
      return fail({ code: 'terminal/argument-missing', facts: { what, usage } });
    }
    if (!out.toLowerCase().endsWith('.html')) {
      return fail({
        code: 'terminal/not-a-choice',
        facts: { option: '--out', value: out, choices: 'FILE.html' },
      });
    }
    const language = singleValue(args, 'language') ?? 'en';
    if (language !== 'en' && language !== 'de') {
      const facts = { option: '--language', value: language, choices: 'en, de' };
      return fail({ code: 'terminal/not-a-choice', facts });
    }
    const date = singleValue(args, 'date');
    return withSession(folder, async (host) => {
      const made = await host.ask('handover.make', { language, ...(date === undefined ? {} : { date }) });
      if (!made.ok) return made;
      const written = await writeAtomic(out, made.value.html);
      return written.ok ? ok({ text: `Wrote ${out}.`, json: { file: out } }) : written;
    });
  },
} as const;
