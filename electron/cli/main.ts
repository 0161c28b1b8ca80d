import type { Result } from '../../core/result/index.ts';
import type { OptionKind } from './args.ts';
import type { Answer } from './output.ts';

export type Verb = {
  readonly usage: string;
  readonly what: string;
  readonly options: Readonly<Record<string, OptionKind>>;
  readonly run: (args: import('./args.ts').Arguments) => Promise<Result<Answer>>;
};

/** Verbs load when they are called: the program must answer before a heavy library is even read. */
const verbs: Readonly<Record<string, { what: string; load: () => Promise<{ verb: Verb }> }>> = {
  pulls: { what: 'find the pulls in a log', load: () => import('./verbs/pulls.ts') },
  judge: { what: 'compare logs before and after one change', load: () => import('./verbs/judge.ts') },
  new: { what: 'make a session folder', load: () => import('./verbs/new.ts') },
  import: { what: 'copy logs into a session', load: () => import('./verbs/import.ts') },
  move: { what: 'move logs of a session to another entry', load: () => import('./verbs/move.ts') },
  ledger: { what: 'what each change of a session was worth', load: () => import('./verbs/ledger.ts') },
  ladder: {
    what: 'ordered single changes from baseline to target, with stop rules',
    load: () => import('./verbs/ladder.ts'),
  },
  mixture: {
    what: 'what the alcohol does to the mixture over boost',
    load: () => import('./verbs/mixture.ts'),
  },
  plan: {
    what: 'nozzle, start and full points, guard band, fit review',
    load: () => import('./verbs/plan.ts'),
  },
  fluid: { what: 'properties of a water-alcohol mix', load: () => import('./verbs/fluid.ts') },
  check: { what: 'hold every file of a session against its hash', load: () => import('./verbs/check.ts') },
  pack: { what: 'pack a session into one zip', load: () => import('./verbs/pack.ts') },
  unpack: { what: 'unpack a zipped session', load: () => import('./verbs/unpack.ts') },
  merge: { what: 'bring two copies of a session together', load: () => import('./verbs/merge.ts') },
  summary: { what: 'write the customer summary', load: () => import('./verbs/summary.ts') },
  'coast-down': {
    what: 'road load from rolling in neutral, for the car file',
    load: () => import('./verbs/coast-down.ts'),
  },
  power: { what: 'wheel and engine power of each pull', load: () => import('./verbs/power.ts') },
};

function help(): string {
  const width = Math.max(...Object.keys(verbs).map((v) => v.length));
  const lines = Object.entries(verbs).map(([name, v]) => `  ${name.padEnd(width)}  ${v.what}`);
  return `onechange <verb> [--json] [--help]\n\n${lines.join('\n')}\n`;
}

/**
 * Runs one command line. Exit codes: 0 an answer, 2 bad input, 1 our own fault. With --json everything a
 * script needs, errors too, is one JSON value on stdout.
 */
export async function main(words: readonly string[]): Promise<number> {
  const wantsJson = words.includes('--json');
  const [name = '', ...rest] = words.filter((w) => w !== '--json');
  if (name === '' || name === '--help' || name === 'help') {
    process.stdout.write(help());
    return name === '' ? 2 : 0;
  }
  const { errorJson, errorText } = await import('./output.ts');
  const { readArguments } = await import('./args.ts');
  try {
    const entry = Object.hasOwn(verbs, name) ? verbs[name] : undefined;
    let result: Result<Answer>;
    if (!entry) {
      const known = Object.keys(verbs).join(', ');
      result = { ok: false, problems: [{ code: 'terminal/unknown-verb', facts: { verb: name, known } }] };
    } else {
      const { verb } = await entry.load();
      if (rest.includes('--help')) {
        process.stdout.write(`${verb.usage}\n\n${verb.what}\n`);
        return 0;
      }
      const args = readArguments(rest, verb.options);
      result = args.ok ? await verb.run(args.value) : args;
    }
    const answer = result.ok ? result.value : null;
    const problems = result.ok ? (result.value.failed ?? null) : result.problems;
    if (wantsJson) {
      const json = problems
        ? { ...(answer?.json as object | undefined), ...errorJson(problems) }
        : answer?.json;
      process.stdout.write(`${JSON.stringify(json)}\n`);
    } else {
      if (answer) process.stdout.write(`${answer.text}\n`);
      if (problems) process.stderr.write(`${errorText(problems)}\n`);
    }
    return problems ? 2 : 0;
  } catch (fault) {
    const message = fault instanceof Error ? fault.message : String(fault);
    if (wantsJson) {
      process.stdout.write(`${JSON.stringify({ error: { code: 'internal', message, file: null } })}\n`);
    } else {
      process.stderr.write(`Something went wrong inside the program: ${message}\n`);
      if (fault instanceof Error && process.env.ONECHANGE_DEBUG) process.stderr.write(`${fault.stack}\n`);
    }
    return 1;
  }
}
