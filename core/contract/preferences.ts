import { z } from 'zod';
import { MappingProfileSchema, mostProfiles } from '../log/index.ts';
import { metricUnits, UnitChoiceSchema } from '../units/index.ts';

/** What costs a click to lose. Kept by the shell, never in a session. */
export const PreferencesSchema = z.object({
  language: z.enum(['en', 'de']).default('en'),
  units: UnitChoiceSchema.default(metricUnits),
  theme: z.enum(['system', 'day', 'night']).default('system'),
  /** A short tone in the ride view with a new pull, a closed gate, low fluid. */
  rideSound: z.boolean().default(false),
  /** The folder that was watched last. */
  watched: z.string().max(2000).default(''),
  /** How columns were corrected, for later logs with the same ones. */
  columnProfiles: z.array(MappingProfileSchema).max(mostProfiles).default([]),
  recent: z
    .array(z.object({ folder: z.string(), name: z.string() }))
    .max(50)
    .default([]),
});
export type Preferences = z.infer<typeof PreferencesSchema>;
export const defaultPreferences: Preferences = PreferencesSchema.parse({});
