import { z } from 'zod';
import { NoteSchema, ProblemSchema } from './wire.ts';

/** Which way a roll went on the road, or that it is not to count. */
export const rollWays = ['out', 'back', 'left-out'] as const;
export type RollWay = (typeof rollWays)[number];

/** Runs in which the car rolls in neutral, and how often. */
export const CoastDownRunsSchema = z.object({
  runs: z.array(z.object({ runId: z.string(), rolls: z.int() })),
});

/** The rolls of some runs in their order, and the road load that those which count give, SI; `fit` is null where they give none. */
export const CoastDownSchema = z.object({
  rolls: z.array(
    z.object({
      from_s: z.number(),
      to_s: z.number(),
      /** What a person reads in the file is earlier by this [s], where the file's clock started anew. */
      countedOn_s: z.number(),
      fromSpeed: z.number(),
      toSpeed: z.number(),
      way: z.enum(rollWays),
      runId: z.string(),
    }),
  ),
  fit: z
    .object({
      roadLoad: z.object({
        a_N: z.number(),
        b_N_s_m: z.number(),
        c_N_s2_m2: z.number(),
        half_percent: z.number(),
      }),
      /** Halves of the 95 % intervals of the coefficients. */
      half: z.object({ a: z.number(), b: z.number(), c: z.number() }),
      force: z.array(
        z.object({ speed: z.number(), force: z.number(), half: z.number(), isRolled: z.boolean() }),
      ),
      mass: z.number(),
      rolls: z.int(),
      notes: z.array(NoteSchema),
    })
    .nullable(),
  /** Why the rolls give no road load. */
  problems: z.array(ProblemSchema),
});
export type CoastDown = z.infer<typeof CoastDownSchema>;
