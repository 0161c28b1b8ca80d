import { SetupSchema } from '../../../core/injection/index.ts';
import {
  type Ladder,
  type LadderPlace,
  ladderJson,
  ladderLimits,
  ladderPlaces,
  planLadder,
  stepQuantity,
} from '../../../core/ladder/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { LimitsSchema, problemsOfSchema } from '../../../core/session/index.ts';
import { noteText } from '../../../core/words/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import { readJson } from '../files.ts';
import { type Answer, terminalShow as show, table } from '../output.ts';

const usage = 'onechange ladder SETUP.json [--place street|dyno] [--json]';

function ladderText(ladder: Ladder): string {
  const rows = ladder.steps.map((step) => {
    const kind = stepQuantity[step.kind];
    const end = (value: number | null) => (value === null || kind === null ? '' : show.quantity(value, kind));
    const { power, knockHeadroom_rad: room, injectorDuty, fluidFlow, intake } = step.predicted;
    return [
      `${step.n}`,
      step.kind,
      end(step.from),
      end(step.to),
      power ? `${show.bare(power[0], 'power', 0)} to ${show.quantity(power[1], 'power', 0)}` : '?',
      room ? `${show.bare(room[0], 'angle')} to ${show.quantity(room[1], 'angle')}` : '',
      show.quantity(fluidFlow, 'volumeFlow'),
      injectorDuty === null ? '?' : show.quantity(injectorDuty, 'share', 0),
      Number.isFinite(intake) ? show.quantity(intake, 'temperature', 0) : '?',
    ];
  });
  const head = ['step', '', 'from', 'to', 'crank power', 'knock room', 'fluid', 'duty', 'intake'];
  const why = ladder.steps.map((s) => `${s.n}. ${s.reasons.map((n) => noteText(n, show)).join(' ')}`);
  const cautions = ladder.steps.flatMap((s) => s.cautions.map((n) => noteText(n, show)));
  const { routine } = ladder;
  const gates = ladder.steps[ladder.steps.length - 1]?.gates ?? [];
  return [
    table([head, ...rows], [0, 2, 3, 4, 5, 6, 7, 8]),
    why.join('\n'),
    `Each step: ${routine.pulls} pulls${routine.bothWays ? ', half of them each way' : ''}, ${routine.coolDown} s or more between; an earlier entry again after every ${routine.returnAfter}.`,
    table(
      gates.map((g) => [
        g.quantity,
        `${g.isLowest ? 'at least' : 'below'} ${show.quantity(g.limit, g.kind)}`,
        `else ${g.ifClosed}`,
      ]),
    ),
    ...new Set(cautions),
    ...ladder.notes.map((n) => noteText(n, show)),
  ].join('\n\n');
}

export const verb = {
  usage,
  what: 'Ordered single changes from baseline to target, each with its stop rules. `limits` in SETUP.json are those of a session.',
  options: { place: 'one' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const file = args.positionals[0];
    if (file === undefined)
      return fail({ code: 'terminal/argument-missing', facts: { what: 'SETUP.json', usage } });
    const asked = singleValue(args, 'place') ?? 'street';
    const place = ladderPlaces.find((p): p is LadderPlace => p === asked);
    if (!place) {
      const choices = ladderPlaces.join(', ');
      return fail({ code: 'terminal/not-a-choice', facts: { option: '--place', value: asked, choices } });
    }
    const json = await readJson(file);
    if (!json.ok) return json;
    const setup = SetupSchema.safeParse(json.value);
    if (!setup.success) return fail(...problemsOfSchema(setup.error, file));
    const limits = LimitsSchema.safeParse((setup.data as { limits?: unknown }).limits ?? {});
    if (!limits.success) return fail(...problemsOfSchema(limits.error, file));
    const ladder = planLadder({ setup: setup.data, limits: ladderLimits(limits.data), ledger: [], place });
    if (!ladder.ok) return ladder;
    return ok({ text: ladderText(ladder.value), json: ladderJson(ladder.value) });
  },
} as const;
