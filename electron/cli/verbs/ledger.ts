import type { LedgerLine } from '../../../core/contract/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import type { Entry } from '../../../core/session/index.ts';
import { entryTitle, noteText, screenWords } from '../../../core/words/index.ts';
import type { Arguments } from '../args.ts';
import { type Answer, rounded, table, terminalShow } from '../output.ts';
import { withSession } from '../session-host.ts';

const usage = 'onechange ledger FOLDER [--json]';
const kilowatts = (watts: number | null) => (watts === null ? null : rounded(watts / 1e3, 3));

function row(entry: Entry, number: number, line: LedgerLine): string[] {
  const { verdict, level } = line;
  const interval = verdict?.interval95;
  return [
    `${number}`,
    entryTitle(entry, terminalShow),
    `${line.pulls}`,
    verdict?.effect == null
      ? level
        ? terminalShow.quantity(level.mean, 'power')
        : ''
      : terminalShow.difference(verdict.effect, 'power'),
    interval
      ? `${terminalShow.difference(interval[0], 'power')} to ${terminalShow.difference(interval[1], 'power')}`
      : '',
    verdict ? screenWords('en').ledger.verdicts[verdict.kind] : number === 0 ? 'baseline' : 'not driven',
    verdict?.reasons[0] ? noteText(verdict.reasons[0], terminalShow) : '',
  ];
}

export const verb = {
  usage,
  what: 'The ledger of a session: each change with its effect on wheel power, the 95 % interval and the verdict.',
  options: {},
  async run(args: Arguments): Promise<Result<Answer>> {
    const folder = args.positionals[0];
    if (folder === undefined) {
      return fail({ code: 'terminal/argument-missing', facts: { what: 'A session folder', usage } });
    }
    return withSession(folder, async (host, { session }) => {
      const ledger = await host.ask('ledger.get', {});
      if (!ledger.ok) return ledger;
      const { lines } = ledger.value;
      const entries = session.ledger.flatMap((entry, number) => {
        const line = lines.find((l) => l.entryId === entry.id);
        return line ? [{ entry, number, line }] : [];
      });
      const head = ['', 'change', 'pulls', 'effect', '95 % interval', 'verdict', ''];
      const text = [
        session.isInvented
          ? `${session.name}. Invented example: no such car, nothing was measured.`
          : session.name,
        '',
        table([head, ...entries.map(({ entry, number, line }) => row(entry, number, line))], [2, 3]),
      ].join('\n');
      const json = {
        session: session.name,
        isInvented: session.isInvented,
        entries: entries.map(({ entry, number, line: { verdict, level, pulls, againstId } }) => ({
          number,
          id: entry.id,
          change: entryTitle(entry, terminalShow),
          against: againstId,
          pulls,
          level_kW: level && kilowatts(level.mean),
          effect_kW: kilowatts(verdict?.effect ?? null),
          ci95_kW: verdict?.interval95?.map(kilowatts) ?? null,
          verdict: verdict?.kind ?? null,
          reasons: verdict?.reasons.map((n) => ({ code: n.code, text: noteText(n, terminalShow) })) ?? [],
        })),
      };
      return ok({ text, json });
    });
  },
} as const;
