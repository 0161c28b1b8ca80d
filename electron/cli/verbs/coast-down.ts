import { type CoastDownWindow, coastDownReport, findRolls, rollsTold } from '../../../core/power/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { unitOf } from '../../../core/units/index.ts';
import { noteText } from '../../../core/words/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import { readCar } from '../files.ts';
import { type Answer, rounded, table, terminalShow } from '../output.ts';
import { readLogFile } from '../read-log-file.ts';

const usage =
  'onechange coast-down LOG --car CAR.json [--out FROM-TO...] [--back FROM-TO...] [--turns] [--json], times in seconds';

/** '12-75.5' in seconds of the file to rows of the log. */
function windowOf(text: string, time: Float64Array, way: 1 | -1): CoastDownWindow | null {
  const [, from, to] = /^(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)$/.exec(text) ?? [];
  if (from === undefined || to === undefined || Number(to) <= Number(from)) return null;
  const first = time.findIndex((t) => t >= Number(from));
  const end = time.findIndex((t) => t > Number(to));
  return first < 0 ? null : { from: first, to: end < 0 ? time.length : end, way };
}

function windowsOf(args: Arguments, time: Float64Array): Result<readonly CoastDownWindow[]> {
  const windows: CoastDownWindow[] = [];
  for (const [name, way] of [
    ['out', 1],
    ['back', -1],
  ] as const) {
    for (const text of args.values.get(name) ?? []) {
      const window = windowOf(text, time, way);
      if (!window)
        return fail({
          code: 'terminal/argument-missing',
          facts: { what: `A time span in --${name}`, usage },
        });
      windows.push(window);
    }
  }
  return ok(windows);
}

export const verb = {
  usage,
  what: 'Road load from rolling in neutral, for roadLoad of CAR.json. Rolls are found, or named by their seconds.',
  options: { car: 'one', out: 'many', back: 'many', turns: 'flag' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const file = args.positionals[0];
    const carPath = singleValue(args, 'car');
    if (file === undefined || carPath === undefined) {
      const what = file === undefined ? 'A log' : '--car CAR.json';
      return fail({ code: 'terminal/argument-missing', facts: { what, usage } });
    }
    const car = await readCar(carPath);
    if (!car.ok) return car;
    const log = await readLogFile(file);
    if (!log.ok) return log;
    const named = windowsOf(args, log.value.time);
    if (!named.ok) return named;
    const rolls =
      named.value.length > 0
        ? named.value
        : findRolls(log.value).map(
            (w, n): CoastDownWindow => ({
              ...w,
              way: args.flags.has('turns') && n % 2 === 1 ? -1 : 1,
            }),
          );
    if (rolls.length === 0) return fail({ code: 'power/coast-down-none', facts: {}, where: { file } });
    const found = coastDownReport(log.value, rolls, car.value);
    if (!found.ok) return found;
    const { roadLoad, half, force, mass, notes } = found.value;
    const told = rollsTold(log.value, rolls);
    const json = {
      file,
      rolls: told.map((r, i) => ({
        from_s: rounded(r.from_s, 2),
        to_s: rounded(r.to_s, 2),
        way: rolls[i]?.way === -1 ? 'back' : 'out',
      })),
      mass_kg: rounded(mass, 1),
      roadLoad,
      half95: { a_N: rounded(half.a, 2), b_N_s_m: rounded(half.b, 4), c_N_s2_m2: rounded(half.c, 5) },
      force: force.map((at) => ({
        speed_km_h: rounded(at.speed * 3.6, 0),
        force_N: rounded(at.force, 1),
        half95_N: rounded(at.half, 1),
      })),
      warnings: notes.map((note) => ({ code: note.code, text: noteText(note, terminalShow) })),
    };
    const coefficient = (name: string, value: number, h: number, unit: string, digits: number) => [
      name,
      `${terminalShow.number(value, digits)} ± ${terminalShow.number(h, digits)} ${unitOf(unit).symbol}`,
    ];
    const text = [
      table([
        ['roll', 'from', 'to', 'way'],
        ...json.rolls.map((r, i) => [
          `${i + 1}`,
          terminalShow.quantity(r.from_s ?? Number.NaN, 'time'),
          terminalShow.quantity(r.to_s ?? Number.NaN, 'time'),
          r.way,
        ]),
      ]),
      table([
        coefficient('A', roadLoad.a_N, half.a, 'N', 1),
        coefficient('B', roadLoad.b_N_s_m, half.b, 'N s/m', 3),
        coefficient('C', roadLoad.c_N_s2_m2, half.c, 'N s2/m2', 4),
        ...force.map((at) => [
          `at ${terminalShow.quantity(at.speed, 'speed', 0)}`,
          terminalShow.withHalf(at.force, at.half, 'force'),
        ]),
      ]),
      notes.map((note) => noteText(note, terminalShow)).join('\n'),
      `For CAR.json:  "roadLoad": ${JSON.stringify(roadLoad)}`,
    ].join('\n\n');
    return ok({ text, json });
  },
} as const;
