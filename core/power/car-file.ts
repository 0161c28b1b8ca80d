import { z } from 'zod';
import { CarSchema } from './car.ts';
import { ConditionsSchema } from './conditions.ts';

/** CAR.json of the terminal shell: the car, and where wanted the air it was driven in. */
export const CarFileSchema = z.looseObject({
  ...CarSchema.shape,
  conditions: ConditionsSchema.optional(),
});
export type CarFile = z.infer<typeof CarFileSchema>;
