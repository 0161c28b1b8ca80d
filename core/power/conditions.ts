import { z } from 'zod';

/** The air, the place and the dyno of a session or a run; null is unknown and is never filled with a plausible value. */
export const ConditionsSchema = z.looseObject({
  place: z.enum(['dyno', 'road']).nullable().default(null),
  ambient_C: z.number().min(-60).max(70).nullable().default(null),
  /** Absolute, as a barometer at the place reads it, not reduced to sea level. */
  barometer_kPa: z.number().min(40).max(115).nullable().default(null),
  relativeHumidity_percent: z.number().min(0).max(100).nullable().default(null),
  /** Rise per distance, uphill positive. */
  grade_percent: z.number().min(-30).max(30).nullable().default(null),
  /**
   * What a dyno turns up in a ramp and leaves out of its reading: about the driven axle (rollers, hubs, wheels), and
   * at the engine's speed (brake of an engine bench).
   */
  rampInertiaWheel_kg_m2: z.number().min(0).max(2000).nullable().default(null),
  rampInertiaEngine_kg_m2: z.number().min(0).max(20).nullable().default(null),
});
export type Conditions = z.infer<typeof ConditionsSchema>;

/** All unknown. */
export const unknownConditions: Conditions = ConditionsSchema.parse({});
