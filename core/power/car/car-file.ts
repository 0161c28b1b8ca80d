import { z } from 'zod';
import { ConditionsSchema } from '../conditions.ts';
import { CarSchema } from './car.ts';

/** CAR.json of the terminal shell: the car, and where wanted the air it was driven in. */
export const CarFileSchema = z.looseObject({
  ...CarSchema.shape,
  conditions: ConditionsSchema.optional(),
});
export type CarFile = z.infer<typeof CarFileSchema>;
