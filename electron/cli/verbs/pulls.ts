import { countedOnAt, findPulls, settleSpeedUnit } from '../../../core/log/index.ts';
import { rollingRadius } from '../../../core/power/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { noteText } from '../../../core/words/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import { readCar } from '../files.ts';
import { type Answer, rounded, table, terminalShow } from '../output.ts';
import { readLogFile } from '../read-log-file.ts';

const usage = 'onechange pulls LOG [--car CAR.json] [--json]';
/** Two columns beside it fit a terminal of 100 characters. */
const widestName = 60;

export const verb = {
  usage,
  what: 'Finds every full-throttle pull in a log and says what each column was taken for.',
  options: { car: 'one' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const file = args.positionals[0];
    if (file === undefined) {
      return fail({ code: 'terminal/argument-missing', facts: { what: 'A log', usage } });
    }
    const carPath = singleValue(args, 'car');
    const car = carPath === undefined ? null : await readCar(carPath);
    if (car && !car.ok) return car;
    const read = await readLogFile(file);
    if (!read.ok) return read;
    const gears = car ? { ...car.value, rollingRadius_m: rollingRadius(car.value).radius } : {};
    const log = settleSpeedUnit(read.value, gears);
    const found = findPulls(log, gears);
    // As the file's own clock shows it.
    const shown = (at: number, p: (typeof found.pulls)[number]) => at - countedOnAt(log, p.from);
    const notes = [...log.warnings, ...found.warnings];
    const json = {
      file,
      channels: log.channels.map((c) => ({ column: c.column, quantity: c.quantity, unit: c.unit })),
      pulls: found.pulls.map((p) => ({
        start_s: rounded(shown(p.start_s, p), 3),
        end_s: rounded(shown(p.end_s, p), 3),
        gear: p.gear,
        rpmFrom: rounded(p.rpmFrom, 0),
        rpmTo: rounded(p.rpmTo, 0),
        complete: p.complete,
        flags: p.flags.map((f) => f.code),
      })),
      warnings: notes.map((n) => ({ code: n.code, text: noteText(n, terminalShow) })),
    };
    const rows = found.pulls.map((p, i) => [
      `${i + 1}`,
      terminalShow.quantity(shown(p.start_s, p), 'time'),
      terminalShow.quantity(shown(p.end_s, p), 'time'),
      p.gear === null ? '?' : `${p.gear}`,
      Number.isFinite(p.rpmFrom) ? `${Math.round(p.rpmFrom)}` : '?',
      Number.isFinite(p.rpmTo) ? `${Math.round(p.rpmTo)}` : '?',
      p.complete ? 'counts' : 'aborted',
      p.flags.map((f) => noteText(f, terminalShow)).join(' '),
    ]);
    const channels = log.channels.map((c) => [shortened(c.column), c.quantity ?? '(kept, not used)', c.unit]);
    const text = [
      table([['column', 'taken for', 'unit'], ...channels]),
      rows.length === 0
        ? 'No full-throttle pull found.'
        : table([['pull', 'from', 'to', 'gear', 'rpm from', 'to', '', ''], ...rows], [1, 2, 3, 4, 5]),
      ...notes.filter((n) => n.code !== 'log/no-pulls').map((n) => noteText(n, terminalShow)),
    ].join('\n\n');
    return ok({ text, json });
  },
} as const;

/** A column's name that leaves the others in sight; JSON holds it whole. */
function shortened(name: string): string {
  return name.length <= widestName ? name : `${name.slice(0, widestName - 1)}…`;
}
