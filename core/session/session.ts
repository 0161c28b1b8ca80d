import { z } from 'zod';
import { DerivedChannelSchema } from '../log/index.ts';
import { CarSchema, ConditionsSchema } from '../power/index.ts';
import { EntrySchema } from './entry.ts';
import { HandoverChoicesSchema, noHandoverChoices } from './handover-choices.ts';
import { LeaningSchema } from './leaning.ts';
import { LimitsSchema } from './limits.ts';
import { IdSchema } from './run-record.ts';
import { SessionTableSchema } from './session-table.ts';
import { SetupSchema } from './setup.ts';

/**
 * session.json. Keys that this version does not know are kept: a note added by hand survives every save.
 * Unknown is null, never a plausible value.
 */
export const SessionSchema = z.looseObject({
  schemaVersion: z.literal(1),
  id: IdSchema,
  name: z.string().min(1).max(200),
  createdAt: z.iso.datetime(),
  car: CarSchema,
  /** Engine, fluid system and targets; null until the setup sheet was opened. */
  setup: SetupSchema.nullable().default(null),
  conditions: ConditionsSchema,
  limits: LimitsSchema,
  /** The earlier session of the car whose repeatability supports the verdicts of this one. */
  leansOn: LeaningSchema.nullable().default(null),
  ledger: z.array(EntrySchema),
  /** Spark, boost and mixture tables of the engine control, as read and as stepped. */
  tables: z.array(SessionTableSchema).max(40).default([]),
  note: z.string().max(20_000).default(''),
  /** Channels by formula, added to every log of the session. */
  derivedChannels: z.array(DerivedChannelSchema).max(100).default([]),
  /** How typed car and condition values were written, by field path: shown back as typed. */
  asTyped: z.record(z.string(), z.looseObject({ value: z.number(), unit: z.string() })).default({}),
  handover: HandoverChoicesSchema.default(noHandoverChoices),
  /** True for a bundled invented session, shown wherever its numbers are. */
  isInvented: z.boolean().default(false),
});
export type Session = z.infer<typeof SessionSchema>;

/** A fresh session with a baseline entry that waits for its pulls. */
export function createSession(facts: {
  id: string;
  baselineId: string;
  name: string;
  now: string;
  car: z.input<typeof CarSchema>;
}): Session {
  return SessionSchema.parse({
    schemaVersion: 1,
    id: facts.id,
    name: facts.name,
    createdAt: facts.now,
    car: facts.car,
    conditions: {},
    limits: {},
    ledger: [{ id: facts.baselineId, kind: 'baseline', createdAt: facts.now }],
  });
}
