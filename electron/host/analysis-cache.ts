import { z } from 'zod';
import { NoteSchema, ProblemSchema } from '../../core/contract/index.ts';
import type { Log } from '../../core/log/index.ts';
import { correctionStandards } from '../../core/power/index.ts';
import type { RunAnalysis } from '../../core/session/index.ts';
import type { CacheArray } from '../store/index.ts';

/** The arrays of one pull's power, in the order of the file. */
const arrayNames = [
  'engineSpeed_rad_s',
  'wheelPower',
  'enginePower',
  'wheelPowerError',
  'systematicError',
  'time',
] as const;

/** JSON has no NaN. */
const number = z
  .number()
  .nullable()
  .transform((x) => x ?? Number.NaN);

const PullSchema = z.object({
  id: z.string(),
  runId: z.string(),
  pull: z.object({
    from: z.int(),
    to: z.int(),
    start_s: number,
    end_s: number,
    gear: z.number().nullable(),
    rpmFrom: number,
    rpmTo: number,
    complete: z.boolean(),
    flags: z.array(NoteSchema),
  }),
  counts: z.boolean(),
  droppedBecause: z.string().nullable(),
  decisions: z.array(z.object({ action: z.enum(['drop', 'restore']), reason: z.string() })),
  isTrimmed: z.boolean(),
  trimmedBecause: z.string().nullable(),
  problems: z.array(ProblemSchema),
  power: z
    .object({
      bandwidth: number,
      basis: z.enum(['engine-speed', 'vehicle-speed', 'torque-channel', 'power-channel']),
      correction: z.object({ standard: z.enum(correctionStandards), factor: z.number() }),
      notes: z.array(NoteSchema),
    })
    .nullable(),
});

/** What was found in a log, as far as it is no array; `key` names everything that it depends on besides the log. */
export const AnalysisHeadSchema = z.object({
  key: z.string(),
  pulls: z.array(PullSchema),
  warnings: z.array(NoteSchema),
  problems: z.array(ProblemSchema),
});

/** Pulls and their power as they go into the cache, behind the channels of their log. */
export function headOfAnalysis({ pulls, warnings, problems }: RunAnalysis, key: string) {
  const heads = pulls.map(({ power, ...rest }) => {
    if (!power) return { ...rest, power };
    const { bandwidth, basis, correction, notes } = power;
    return { ...rest, power: { bandwidth, basis, correction, notes } };
  });
  const arrays = pulls.flatMap(({ power }) => (power ? arrayNames.map((name) => power[name]) : []));
  return { head: { key, pulls: heads, warnings, problems }, arrays };
}

/** The analysis back from the cache; null where it does not fit, which is no loss. */
export function analysisOfHead(
  log: Log,
  head: z.infer<typeof AnalysisHeadSchema>,
  arrays: readonly CacheArray[],
): RunAnalysis | null {
  const pulls: RunAnalysis['pulls'][number][] = [];
  let at = 0;
  for (const { power, ...rest } of head.pulls) {
    if (!power) {
      pulls.push({ ...rest, power });
      continue;
    }
    const own = arrays.slice(at, at + arrayNames.length);
    at += arrayNames.length;
    if (own.length < arrayNames.length || !own.every((a) => a instanceof Float64Array)) return null;
    if (own.some((a) => a.length !== own[0]?.length)) return null;
    const [engineSpeed_rad_s, wheelPower, enginePower, wheelPowerError, systematicError, time] =
      own as Float64Array[] as [
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
        Float64Array,
      ];
    pulls.push({
      ...rest,
      power: { ...power, engineSpeed_rad_s, wheelPower, enginePower, wheelPowerError, systematicError, time },
    });
  }
  return { log, pulls, warnings: head.warnings, problems: head.problems };
}
