import { resolve } from 'node:path';
import {
  type ChangeDeclaration,
  changeKinds,
  declareChange,
  judge,
  type PullEvidence,
  type RepeatabilityPrior,
  type Verdict,
} from '../../../core/compare/index.ts';
import { quantities } from '../../../core/log/index.ts';
import { type CarFile, unknownConditions } from '../../../core/power/index.ts';
import { fail, type Note, ok, type Result } from '../../../core/result/index.ts';
import { evidenceOfRun } from '../../../core/session/index.ts';
import { noteText, verdictSentence, wordsOf } from '../../../core/words/index.ts';
import { analyseFile } from '../analyse-file.ts';
import { type Arguments, singleValue } from '../args.ts';
import { readCar } from '../files.ts';
import { type Answer, table, terminalShow } from '../output.ts';
import { terminalHost } from '../session-host.ts';
import { verdictJson } from '../verdict-json.ts';

const usage =
  'onechange judge --car CAR.json --before LOG... --after LOG... [--changed WHAT] [--margin PERCENT] [--earlier FOLDER] [--json]';

async function evidenceOf(
  paths: readonly string[],
  side: 'before' | 'after',
  car: CarFile,
  firstOrder: number,
): Promise<Result<PullEvidence[]>> {
  const evidence: PullEvidence[] = [];
  for (const path of paths) {
    const analysis = await analyseFile(path, car);
    if (!analysis.ok) return analysis;
    evidence.push(
      ...evidenceOfRun(analysis.value, {
        entryId: side,
        firstOrder: firstOrder + evidence.length,
        car,
        conditions: car.conditions ?? unknownConditions,
        direction: null,
      }),
    );
  }
  return evidence.length > 0
    ? ok(evidence)
    : fail({ code: 'terminal/no-pulls', facts: { side }, where: { file: paths.join(', ') } });
}

function listed(title: string, notes: readonly Note[]): string[] {
  return notes.length === 0
    ? []
    : [[title, ...notes.map((n) => `- ${noteText(n, terminalShow)}`)].join('\n')];
}

function verdictText(verdict: Verdict, declared: ChangeDeclaration | null): string {
  const sentence = verdictSentence(verdict, declared, terminalShow)
    .map((part) => part.text)
    .join('');
  const names = wordsOf('en').quantities;
  const rows = verdict.witnesses.map((w) => {
    const shown = quantities[w.quantity];
    const half = (w.interval95[1] - w.interval95[0]) / 2;
    return [
      names[w.quantity],
      terminalShow.quantity(w.before, shown),
      terminalShow.quantity(w.after, shown),
      terminalShow.differenceWithHalf(w.delta, half, shown),
      w.remark ? noteText(w.remark, terminalShow) : '',
    ];
  });
  // A refusal's sentence ends with its first reason already.
  const reasons = verdict.kind === 'not-comparable' ? verdict.reasons.slice(1) : verdict.reasons;
  return [
    sentence,
    ...listed(verdict.kind === 'not-comparable' ? 'Also in the way:' : 'Why it stays open:', reasons),
    ...listed('Remarks:', verdict.remarks),
    table([['witness', 'before', 'after', 'difference', ''], ...rows], [1, 2, 3]),
  ].join('\n\n');
}

/** How well pulls repeated in an earlier session of the same car; null where it can't tell. */
async function repeatabilityOf(folder: string): Promise<Result<RepeatabilityPrior | null>> {
  const host = terminalHost('terminal');
  try {
    const told = await host.ask('sessions.repeatability', { folder: resolve(folder) });
    return told.ok ? ok(told.value.repeatability) : told;
  } finally {
    await host.close();
  }
}

export const verb = {
  usage,
  what: `Says what one change was worth. WHAT is one of ${changeKinds.join(', ')}. FOLDER is an earlier session of the same car, to lean on how its pulls repeated.`,
  options: { car: 'one', before: 'many', after: 'many', changed: 'one', margin: 'one', earlier: 'one' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const carPath = singleValue(args, 'car');
    const before = args.values.get('before');
    const after = args.values.get('after');
    if (carPath === undefined || !before || !after) {
      const what =
        carPath === undefined ? '--car CAR.json' : before ? '--after with a log' : '--before with a log';
      return fail({ code: 'terminal/argument-missing', facts: { what, usage } });
    }
    const changed = singleValue(args, 'changed');
    const kind = changed === undefined ? null : (changeKinds.find((k) => k === changed) ?? undefined);
    if (kind === undefined) {
      const choices = changeKinds.join(', ');
      const facts = { option: '--changed', value: changed ?? '', choices };
      return fail({ code: 'terminal/not-a-choice', facts });
    }
    const margin = Number(singleValue(args, 'margin') ?? '1');
    if (!(margin > 0 && margin <= 20)) {
      const facts = {
        option: '--margin',
        value: singleValue(args, 'margin') ?? '',
        choices: '0 to 20 percent',
      };
      return fail({ code: 'terminal/not-a-choice', facts });
    }
    const car = await readCar(carPath);
    if (!car.ok) return car;
    const evidenceBefore = await evidenceOf(before, 'before', car.value, 0);
    if (!evidenceBefore.ok) return evidenceBefore;
    const evidenceAfter = await evidenceOf(after, 'after', car.value, evidenceBefore.value.length);
    if (!evidenceAfter.ok) return evidenceAfter;
    const declared = kind === null ? null : declareChange(kind);
    const earlier = singleValue(args, 'earlier');
    const prior = earlier === undefined ? ok(null) : await repeatabilityOf(earlier);
    if (!prior.ok) return prior;
    const verdict = judge({
      before: evidenceBefore.value,
      after: evidenceAfter.value,
      declared,
      margin: margin / 100,
      prior: prior.value,
    });
    return ok({ text: verdictText(verdict, declared), json: verdictJson(verdict) });
  },
} as const;
