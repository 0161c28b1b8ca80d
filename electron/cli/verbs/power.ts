import { countedOnAt, type Log } from '../../../core/log/index.ts';
import { wheelPowerHalf } from '../../../core/power/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import type { AnalysedPull } from '../../../core/session/index.ts';
import { fromSi } from '../../../core/units/index.ts';
import { noteText, problemText } from '../../../core/words/index.ts';
import { analyseFile } from '../analyse-file.ts';
import { type Arguments, singleValue } from '../args.ts';
import { readCar } from '../files.ts';
import { type Answer, rounded, roundedList, table, terminalShow } from '../output.ts';

const usage = 'onechange power LOG --car CAR.json [--json]';
const toKilowatts = (watts: Float64Array) =>
  roundedList(
    watts.map((w) => w / 1e3),
    3,
  );

function peakLine(pull: AnalysedPull, index: number, log: Log): string[] {
  const { power } = pull;
  if (!power) {
    return [`${index + 1}`, ...pull.problems.map((p) => problemText(p, terminalShow).message)];
  }
  let peak = 0;
  for (const [i, w] of power.wheelPower.entries()) if (w > (power.wheelPower[peak] ?? 0)) peak = i;
  return [
    `${index + 1}`,
    terminalShow.quantity(pull.pull.start_s - countedOnAt(log, pull.pull.from), 'time'),
    terminalShow.withHalf(
      power.wheelPower[peak] ?? Number.NaN,
      wheelPowerHalf(power)[peak] ?? Number.NaN,
      'power',
    ),
    terminalShow.quantity(power.enginePower[peak] ?? Number.NaN, 'power'),
    terminalShow.quantity(power.engineSpeed_rad_s[peak] ?? Number.NaN, 'engineSpeed'),
    pull.counts ? '' : 'does not count',
  ];
}

export const verb = {
  usage,
  what: 'Wheel and engine power over engine speed of each pull in a log.',
  options: { car: 'one' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const file = args.positionals[0];
    const carPath = singleValue(args, 'car');
    if (file === undefined || carPath === undefined) {
      const what = file === undefined ? 'A log' : '--car CAR.json';
      return fail({ code: 'terminal/argument-missing', facts: { what, usage } });
    }
    const car = await readCar(carPath);
    if (!car.ok) return car;
    const analysis = await analyseFile(file, car.value);
    if (!analysis.ok) return analysis;
    const { log, pulls, warnings } = analysis.value;
    const notes = [...warnings, ...pulls.flatMap((p) => p.power?.notes ?? [])];
    const said = [...new Map(notes.map((n) => [noteText(n, terminalShow), n.code])).entries()];
    const failures = pulls
      .flatMap((p) => p.problems)
      .map((p) => [problemText(p, terminalShow).message, p.code]);
    const texts = [...said, ...failures];
    const json = {
      file,
      pulls: pulls.flatMap(({ pull, power, counts }) =>
        power
          ? [
              {
                start_s: rounded(pull.start_s - countedOnAt(log, pull.from), 3),
                end_s: rounded(pull.end_s - countedOnAt(log, pull.from), 3),
                counts,
                rpm: roundedList(
                  power.engineSpeed_rad_s.map((w) => fromSi(w, 'rpm')),
                  1,
                ),
                wheelPower_kW: toKilowatts(power.wheelPower),
                wheelPowerHalf95_kW: toKilowatts(wheelPowerHalf(power)),
                enginePower_kW: toKilowatts(power.enginePower),
              },
            ]
          : [],
      ),
      correction: pulls.find((p) => p.power)?.power?.correction ?? {
        standard: car.value.correction,
        factor: null,
      },
      warnings: texts.map(([text, code]) => ({ code, text })),
    };
    const head = ['pull', 'from', 'wheel peak', 'engine', 'at', ''];
    const text = [
      pulls.length === 0
        ? 'No full-throttle pull found.'
        : table([head, ...pulls.map((pull, i) => peakLine(pull, i, log))], [1, 2, 3, 4]),
      // The line above has said it.
      ...texts.filter(([, code]) => code !== 'log/no-pulls').map(([t]) => t),
    ].join('\n');
    return ok({ text, json });
  },
} as const;
