import {
  type CoastDownReport,
  type CoastDownRoll,
  coastDownReport,
  findRolls,
  type LoggedRoll,
  rollsIn,
  rollsTold,
  waysOfRolls,
} from '../../../core/power/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { unitOf } from '../../../core/units/index.ts';
import { noteText } from '../../../core/words/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import { readCar } from '../files.ts';
import { type Answer, rounded, table, terminalShow } from '../output.ts';
import { readLogFile } from '../read-log-file.ts';
import { type NamedLog, namedRolls } from './coast-down-rolls.ts';

const usage =
  'onechange coast-down LOG... --car CAR.json [--out ROLL...] [--back ROLL...] [--turns] [--list] [--json]';

/** All rolls that are found, which way by position or by turns; a roll of which nothing is known goes out. */
function foundRolls(logs: readonly NamedLog[], isByTurns: boolean): LoggedRoll[] {
  const rolls = logs.flatMap(({ log }) => rollsIn(log, findRolls(log)));
  const ways = waysOfRolls(rolls);
  return rolls.map((roll, n) => ({ ...roll, way: isByTurns ? (n % 2 === 1 ? -1 : 1) : (ways[n] ?? 1) }));
}

function rollsJson(logs: readonly NamedLog[], rolls: readonly LoggedRoll[]) {
  return rollsTold(rolls).map((told: CoastDownRoll, i) => ({
    file: logs.find(({ log }) => log === rolls[i]?.log)?.path ?? '',
    from_s: rounded(told.from_s, 2),
    to_s: rounded(told.to_s, 2),
    from_km_h: rounded(3.6 * told.fromSpeed, 1),
    to_km_h: rounded(3.6 * told.toSpeed, 1),
    way: rolls[i]?.way === -1 ? 'back' : 'out',
  }));
}

function rollsText(logs: readonly NamedLog[], rolls: readonly LoggedRoll[]): string {
  const isOne = logs.length === 1;
  const json = rollsJson(logs, rolls);
  return table([
    ['roll', ...(isOne ? [] : ['log']), 'from', 'to', 'speed from', 'to', 'way'],
    ...rollsTold(rolls).map((r, i) => [
      `${i + 1}`,
      ...(isOne ? [] : [json[i]?.file ?? '']),
      terminalShow.quantity(r.from_s, 'time'),
      terminalShow.quantity(r.to_s, 'time'),
      terminalShow.quantity(r.fromSpeed, 'speed', 0),
      terminalShow.quantity(r.toSpeed, 'speed', 0),
      json[i]?.way ?? '',
    ]),
  ]);
}

function reportText({ roadLoad, half, force, notes }: CoastDownReport): string[] {
  const coefficient = (name: string, value: number, h: number, unit: string, digits: number) => [
    name,
    `${terminalShow.number(value, digits)} ± ${terminalShow.number(h, digits)} ${unitOf(unit).symbol}`,
  ];
  return [
    table([
      coefficient('A', roadLoad.a_N, half.a, 'N', 1),
      coefficient('B', roadLoad.b_N_s_m, half.b, 'N s/m', 3),
      coefficient('C', roadLoad.c_N_s2_m2, half.c, 'N s2/m2', 4),
      ...force.map((at) => [
        `at ${terminalShow.quantity(at.speed, 'speed', 0)}${at.isRolled ? '' : ', extrapolated'}`,
        terminalShow.withHalf(at.force, at.half, 'force'),
      ]),
    ]),
    notes.map((note) => noteText(note, terminalShow)).join('\n'),
    `For CAR.json:  "roadLoad": ${JSON.stringify(roadLoad)}`,
  ];
}

export const verb = {
  usage,
  what: 'Road load from rolling in neutral, for roadLoad of CAR.json, from one log or several together. Rolls are found and numbered as --list lists them; which way each went is told by logged positions or heading, by --turns (out, back, out...), or by name. ROLL is a number of that list, a LOG for all rolls in it, or FROM-TO in seconds, with several logs N:FROM-TO for the Nth of them. Once one is named, rolls without a name do not count.',
  options: { car: 'one', out: 'many', back: 'many', turns: 'flag', list: 'flag' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const paths = [...new Set(args.positionals)];
    const carPath = singleValue(args, 'car');
    if (paths.length === 0 || carPath === undefined) {
      const what = paths.length === 0 ? 'A log' : '--car CAR.json';
      return fail({ code: 'terminal/argument-missing', facts: { what, usage } });
    }
    const car = await readCar(carPath);
    if (!car.ok) return car;
    const logs: NamedLog[] = [];
    for (const path of paths) {
      const log = await readLogFile(path);
      if (!log.ok) return log;
      logs.push({ path, log: log.value });
    }
    const found = foundRolls(logs, args.flags.has('turns'));
    if (args.flags.has('list')) {
      return ok({ text: rollsText(logs, found), json: { files: paths, rolls: rollsJson(logs, found) } });
    }
    const named = namedRolls(args, logs, found);
    if (!named.ok) return named;
    const rolls = named.value.length > 0 ? named.value : found;
    if (rolls.length === 0)
      return fail({ code: 'power/coast-down-none', facts: {}, where: { file: paths.join(', ') } });
    const report = coastDownReport(rolls, car.value);
    if (!report.ok) return report;
    const { roadLoad, half, force, mass, notes } = report.value;
    const json = {
      files: paths,
      rolls: rollsJson(logs, rolls),
      mass_kg: rounded(mass, 1),
      roadLoad,
      half95: { a_N: rounded(half.a, 2), b_N_s_m: rounded(half.b, 4), c_N_s2_m2: rounded(half.c, 5) },
      force: force.map((at) => ({
        speed_km_h: rounded(at.speed * 3.6, 0),
        force_N: rounded(at.force, 1),
        half95_N: rounded(at.half, 1),
        extrapolated: !at.isRolled,
      })),
      warnings: notes.map((note) => ({ code: note.code, text: noteText(note, terminalShow) })),
    };
    return ok({ text: [rollsText(logs, rolls), ...reportText(report.value)].join('\n\n'), json });
  },
} as const;
