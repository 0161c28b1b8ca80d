import { type Plan, planJson, planOf, SetupSchema } from '../../../core/injection/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { problemsOfSchema } from '../../../core/session/index.ts';
import { noteText, wordsOf } from '../../../core/words/index.ts';
import type { Arguments } from '../args.ts';
import { readJson } from '../files.ts';
import { type Answer, terminalShow as show, table } from '../output.ts';

const usage = 'onechange plan SETUP.json [--json]';

const rules = wordsOf('en').fitRules;

function planText(plan: Plan): string {
  const { need, nozzle, peak, endurance } = plan;
  const facts = [
    ['need at peak', show.quantity(need.fluid, 'volumeFlow')],
    ['nozzle', `${nozzle.names.join(' + ')}, ${show.number(nozzle.feed, 2)} of the need (${nozzle.fit})`],
    ['at the nozzle', `${show.span(peak.pressureDifference, 'fluidPressure')} across it`],
    ['fluid a pull', show.quantity(endurance.perPull, 'volume', 3)],
  ];
  const strategies = plan.strategies.map((s) => [
    s.name === plan.recommended.name ? '*' : '',
    s.name,
    show.quantity(s.start, 'boost'),
    show.quantity(s.full, 'boost'),
    show.number(s.peakFeed, 2),
    s.notes.map((n) => noteText(n, show)).join(' '),
  ]);
  const guard = plan.guardBand.map((row) => [
    show.quantity(row.boost, 'boost'),
    show.quantity(row.lowestFlow, 'volumeFlow'),
    show.quantity(row.highestFlow, 'volumeFlow'),
  ]);
  const fit = plan.fit.beforeDriving.map((item) => [
    item.hazard,
    rules[item.id].question,
    item.state,
    rules[item.id].remedy,
  ]);
  return [
    table(facts),
    table([['', 'strategy', 'start', 'full', 'feed at peak', ''], ...strategies], [2, 3, 4]),
    noteText(plan.recommended.reason, show),
    table([['boost', 'lowest flow', 'highest flow'], ...guard], [0, 1, 2]),
    fit.length === 0
      ? 'Nothing of the fit review stands open before driving.'
      : `Fix before driving:\n${table(fit)}`,
    ...plan.powerLossGuide.map((n) => noteText(n, show)),
    ...plan.notes.map((n) => noteText(n, show)),
  ].join('\n\n');
}

export const verb = {
  usage,
  what: 'Need, nozzle, start and full points, guard band, endurance and fit review of a setup.',
  options: {},
  async run(args: Arguments): Promise<Result<Answer>> {
    const file = args.positionals[0];
    if (file === undefined) {
      return fail({ code: 'terminal/argument-missing', facts: { what: 'SETUP.json', usage } });
    }
    const json = await readJson(file);
    if (!json.ok) return json;
    const setup = SetupSchema.safeParse(json.value);
    if (!setup.success) return fail(...problemsOfSchema(setup.error, file));
    const plan = planOf(setup.data);
    if (!plan.ok) return plan;
    const shape = planJson(plan.value);
    const fit = plan.value.fit.items.map((item, i) => ({ ...shape.fit[i], ...rules[item.id] }));
    return ok({ text: planText(plan.value), json: { ...shape, fit } });
  },
} as const;
