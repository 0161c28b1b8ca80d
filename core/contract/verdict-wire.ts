import { z } from 'zod';
import { type Verdict, verdictKinds } from '../compare/index.ts';
import { quantityIds } from '../log/index.ts';
import { NoteSchema, SamplesSchema, toSamples } from './wire.ts';

const pair = z.tuple([z.number(), z.number()]);

export const WitnessSchema = z.object({
  quantity: z.enum(quantityIds),
  before: z.number(),
  after: z.number(),
  delta: z.number(),
  interval95: pair,
  declared: z.boolean(),
  role: z.enum(['declared-happened', 'declared-missing', 'follows', 'steady', 'corrected', 'moved']),
  remark: NoteSchema.nullable(),
});

export const DifferenceCurveSchema = z.object({
  engineSpeed_rad_s: SamplesSchema,
  before: SamplesSchema,
  after: SamplesSchema,
  beforeHalf: SamplesSchema,
  afterHalf: SamplesSchema,
  delta: SamplesSchema,
  low: SamplesSchema,
  high: SamplesSchema,
  proven: z.array(z.object({ from: z.int(), to: z.int(), sign: z.union([z.literal(1), z.literal(-1)]) })),
});

/** A verdict for screens and files: SI numbers, arrays as plain lists. */
export const VerdictSchema = z.object({
  kind: z.enum(verdictKinds),
  effect: z.number().nullable(),
  interval95: pair.nullable(),
  effectShare: z.number().nullable(),
  band_rad_s: pair.nullable(),
  pullsBefore: z.int(),
  pullsAfter: z.int(),
  morePulls: z.int().nullable(),
  smallestSeen: z.number().nullable(),
  repeatability: z.object({ deviation: z.number(), degrees: z.number() }).nullable(),
  margin: z.number(),
  meanBefore: z.number().nullable(),
  reasons: z.array(NoteSchema),
  remarks: z.array(NoteSchema),
  witnesses: z.array(WitnessSchema),
  curve: DifferenceCurveSchema.nullable(),
});
export type VerdictWire = z.infer<typeof VerdictSchema>;

/** The verdict as it goes over the contract. */
export function verdictToWire(verdict: Verdict): VerdictWire {
  const { curve, witnesses, ...rest } = verdict;
  return {
    ...rest,
    interval95: rest.interval95 && [...rest.interval95],
    band_rad_s: rest.band_rad_s && [...rest.band_rad_s],
    reasons: [...rest.reasons],
    remarks: [...rest.remarks],
    witnesses: witnesses.map((w) => ({ ...w, interval95: [...w.interval95] })),
    curve: curve && {
      engineSpeed_rad_s: toSamples(curve.engineSpeed_rad_s),
      before: toSamples(curve.before),
      after: toSamples(curve.after),
      beforeHalf: toSamples(curve.beforeHalf),
      afterHalf: toSamples(curve.afterHalf),
      delta: toSamples(curve.delta),
      low: toSamples(curve.low),
      high: toSamples(curve.high),
      proven: [...curve.proven],
    },
  };
}
