import { z } from 'zod';

/**
 * Where the tuner stops. Defaults are common practice, null is "no limit known" and closes no gate.
 */
export const LimitsSchema = z.looseObject({
  /** Effects smaller than this share count as equal. */
  margin_percent: z.number().positive().max(20).default(1),
  leanestLambda: z.number().min(0.5).max(1.5).default(0.9),
  injectorDuty_percent: z.number().min(10).max(100).default(85),
  intake_C: z.number().min(0).max(150).nullable().default(60),
  exhaust_C: z.number().min(300).max(1200).nullable().default(950),
  knockEvents: z.int().min(0).default(1),
  mapCeiling_kPa: z.number().positive().nullable().default(null),
  boostCeiling_kPa: z.number().positive().nullable().default(null),
  fluidPressureLowest_kPa: z.number().min(0).nullable().default(null),
});
export type Limits = z.infer<typeof LimitsSchema>;
