import { z } from 'zod';

const n = z.number();
const known = n.nullable();
const text = z.string();
const level = z.object({ mean_kW: n, half_kW: known }).nullable();

/** What two visits are laid side by side in: first what the power of both rests on, then what was set. */
export const visitConditions = [
  'car',
  'basis',
  'correction',
  'air',
  'gear',
  'mass',
  'tyre',
  'place',
] as const;
export const visitSettings = ['boost', 'spark', 'mixture', 'sprayStart', 'nozzle', 'fluid', 'fuel'] as const;
const visitOrders = ['earlier', 'same-moment', 'later'] as const;
const visitStates = ['same', 'differs', 'unknown', 'own-origin'] as const;

const visitRow = <T extends readonly [string, ...string[]]>(codes: T) =>
  z.object({
    code: z.enum(codes),
    unit: text,
    last: z.union([n, text]).nullable(),
    now: z.union([n, text]).nullable(),
    state: z
      .enum(visitStates)
      .describe(
        'own-origin: each visit counts from its own first measurement, so the two say nothing together',
      ),
  });

/** An earlier visit beside this one, with why power may be compared or not. */
export const VisitSchema = z.object({
  last: z.object({ id: text, name: text, createdAt: text }),
  order: z
    .enum(visitOrders)
    .describe('where `last` stands in time by the moments at which the two sessions were begun'),
  conditions: z.array(visitRow(visitConditions)).describe('each must be the same before power is compared'),
  settings: z.array(visitRow(visitSettings)).describe('as left'),
  sparkCells: known.describe(
    'cells in which the spark tables as left differ; null where they can’t be compared',
  ),
  obstacles: z
    .array(z.enum([...visitConditions, 'band', 'level']))
    .describe('why power is not compared; empty where it is'),
  band_rpm: z.tuple([n, n]).nullable(),
  power: z
    .array(
      z.object({
        what: z.enum(['baseline', 'as-left', 'left-to-baseline']),
        last: level,
        now: level,
        difference_kW: known,
        differenceHalf_kW: known.describe('95 %, from the scatter inside the two visits alone'),
        isProven: z.literal(false),
      }),
    )
    .describe('the spread from day to day is not known, so no difference here is proven'),
});
