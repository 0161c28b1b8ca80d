import { resolve } from 'node:path';
import type { RequestInput } from '../../../core/contract/index.ts';
import { handoverFormats } from '../../../core/contract/index.ts';
import { handoverJsonSchema } from '../../../core/handover/index.ts';
import { fail, ok, type Problem, type Result } from '../../../core/result/index.ts';
import { handoverForms, handoverUnits, papers } from '../../../core/session/index.ts';
import { languages } from '../../../core/words/index.ts';
import { writeAtomic } from '../../host/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import type { Answer } from '../output.ts';
import { withSession } from '../session-host.ts';

const usage =
  'onechange summary FOLDER --out FILE.(html|pdf|csv|json) [--language en|de] [--units metric|metric-ps|imperial] [--form full|one-page] [--paper A4|Letter] [--date YYYY-MM-DD] [--against OTHER] [--json]\n       onechange summary --schema';

type Wish = RequestInput<'handover.export'>;

/** The value of an option that takes one of a list; undefined where it was not given. */
function choice<T extends string>(
  args: Arguments,
  option: string,
  choices: readonly T[],
  problems: Problem[],
): T | undefined {
  const value = singleValue(args, option);
  const found = choices.find((c) => c.toLowerCase() === value?.toLowerCase());
  if (value !== undefined && found === undefined)
    problems.push({
      code: 'terminal/not-a-choice',
      facts: { option: `--${option}`, value, choices: choices.join(', ') },
    });
  return found;
}

export const verb = {
  usage,
  what: 'Writes the customer summary of a session as one self-contained HTML file, as PDF, or its numbers as CSV or JSON. A dated copy stays in the session’s handover folder. --against lays the session of an earlier visit beside it. --schema prints the schema of the JSON.',
  options: {
    out: 'one',
    language: 'one',
    units: 'one',
    form: 'one',
    paper: 'one',
    date: 'one',
    against: 'one',
    schema: 'flag',
  },
  async run(args: Arguments): Promise<Result<Answer>> {
    if (args.flags.has('schema')) {
      const schema = handoverJsonSchema();
      return ok({ text: JSON.stringify(schema, null, 2), json: schema });
    }
    const folder = args.positionals[0];
    const out = singleValue(args, 'out');
    if (folder === undefined || out === undefined) {
      const what = folder === undefined ? 'A session folder' : '--out FILE';
      return fail({ code: 'terminal/argument-missing', facts: { what, usage } });
    }
    const against = singleValue(args, 'against');
    const problems: Problem[] = [];
    const format = handoverFormats.find((f) => out.toLowerCase().endsWith(`.${f}`));
    if (!format)
      problems.push({
        code: 'terminal/not-a-choice',
        facts: { option: '--out', value: out, choices: handoverFormats.map((f) => `FILE.${f}`).join(', ') },
      });
    const wish: Wish = {
      format: format ?? 'html',
      language: choice(args, 'language', languages, problems),
      units: choice(args, 'units', handoverUnits, problems),
      form: choice(args, 'form', handoverForms, problems),
      paper: choice(args, 'paper', papers, problems),
      date: singleValue(args, 'date'),
      against: against === undefined ? undefined : resolve(against),
    };
    const [first, ...rest] = problems;
    if (first) return fail(first, ...rest);
    return withSession(folder, async (host) => {
      const made = await host.ask('handover.export', wish);
      if (!made.ok) return made;
      const path = resolve(out);
      const written = await writeAtomic(path, Buffer.from(made.value.content, 'base64'));
      if (!written.ok) return written;
      const { savedAs } = made.value;
      const copy = savedAs === null ? '' : `\nA copy stays in the session: ${savedAs}`;
      return ok({ text: `Wrote ${out}.${copy}`, json: { file: out, savedAs } });
    });
  },
} as const;
