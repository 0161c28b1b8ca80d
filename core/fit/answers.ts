import { z } from 'zod';

/** What the user said of a rule. Unanswered is no answer at all, and is never passed. */
export const answers = ['yes', 'no', 'not-here'] as const;
export type Answer = (typeof answers)[number];

/** Answers by rule id. Ids of a newer or older list are kept. */
export const AnswersSchema = z.record(z.string(), z.enum(answers));
export type Answers = z.infer<typeof AnswersSchema>;
