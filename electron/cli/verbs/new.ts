import { basename, dirname, resolve } from 'node:path';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { newSession } from '../../host/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import { readCar } from '../files.ts';
import type { Answer } from '../output.ts';

const usage = 'onechange new FOLDER --car CAR.json [--json]';

export const verb = {
  usage,
  what: 'Makes a session folder with a baseline entry that waits for its pulls.',
  options: { car: 'one' },
  async run(args: Arguments): Promise<Result<Answer>> {
    const folder = args.positionals[0];
    const carPath = singleValue(args, 'car');
    if (folder === undefined || carPath === undefined) {
      const what = folder === undefined ? 'A folder' : '--car CAR.json';
      return fail({ code: 'terminal/argument-missing', facts: { what, usage } });
    }
    const car = await readCar(carPath);
    if (!car.ok) return car;
    const target = resolve(folder);
    const made = await newSession(target, basename(target), car.value);
    if (!made.ok) return made;
    return ok({ text: `Made ${made.value} in ${dirname(made.value)}.`, json: { folder: made.value } });
  },
} as const;
