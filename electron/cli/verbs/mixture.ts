import { planOf, SetupSchema } from '../../../core/injection/index.ts';
import { ladderLimits, mixtureJson, mixtureOfSetup, type SetupMixture } from '../../../core/ladder/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { LimitsSchema, problemsOfSchema } from '../../../core/session/index.ts';
import { noteText } from '../../../core/words/index.ts';
import type { Arguments } from '../args.ts';
import { readJson } from '../files.ts';
import { type Answer, terminalShow as show, table } from '../output.ts';

const usage = 'onechange mixture SETUP.json [--json]';

function mixtureText(mixture: SetupMixture): string {
  const { rows, notes } = mixture.plan;
  const lines = rows.map((row) => [
    show.quantity(row.boost, 'boost'),
    show.quantity(row.fluidFlow, 'massFlow', 2),
    show.quantity(row.demand.alcoholShare, 'share'),
    show.number(row.target, 3),
    show.number(row.gauge, 1),
    show.number(row.airFuel, 1),
    show.difference(row.fuelling.tableChange, 'share'),
    show.difference(row.fuelling.expectedTrim, 'share'),
  ]);
  const head = ['boost', 'fluid', 'alcohol', 'lambda', 'gauge', 'true ratio', 'table', 'trim'];
  return [
    table([head, ...lines], [0, 1, 2, 3, 4, 5, 6, 7]),
    ...[...mixture.notes, ...notes].map((n) => noteText(n, show)),
  ].join('\n\n');
}

export const verb = {
  usage,
  what: 'What the alcohol does to the mixture over boost: target, gauge, fuelling table, trim. `limits` in SETUP.json are those of a session.',
  options: {},
  async run(args: Arguments): Promise<Result<Answer>> {
    const file = args.positionals[0];
    if (file === undefined)
      return fail({ code: 'terminal/argument-missing', facts: { what: 'SETUP.json', usage } });
    const json = await readJson(file);
    if (!json.ok) return json;
    const setup = SetupSchema.safeParse(json.value);
    if (!setup.success) return fail(...problemsOfSchema(setup.error, file));
    const plan = planOf(setup.data);
    if (!plan.ok) return plan;
    const limits = LimitsSchema.safeParse((setup.data as { limits?: unknown }).limits ?? {});
    if (!limits.success) return fail(...problemsOfSchema(limits.error, file));
    const mixture = mixtureOfSetup(setup.data, plan.value, ladderLimits(limits.data).leanestLambda);
    if (!mixture.ok) return mixture;
    return ok({ text: mixtureText(mixture.value), json: mixtureJson(mixture.value) });
  },
} as const;
