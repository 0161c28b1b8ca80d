import { z } from 'zod';
import { IdSchema } from './run-record.ts';

/** Largest logo that is kept in a session, before it is written as text. */
export const largestLogo_bytes = 200_000;

/** Units that a customer may be used to; null in the choices is whatever the program itself shows. */
export const handoverUnits = ['metric', 'metric-ps', 'imperial'] as const;
export const handoverForms = ['full', 'one-page'] as const;
export const papers = ['A4', 'Letter'] as const;

/** A picture that prints: raster only, since a drawing can carry script and calls to elsewhere. */
export const LogoSchema = z.looseObject({
  name: z.string().max(200),
  /** The whole file; four characters for three bytes. */
  dataUrl: z
    .string()
    .max(Math.ceil(largestLogo_bytes / 3) * 4 + 30)
    .regex(/^data:image\/(png|jpeg);base64,[A-Za-z0-9+/]+={0,2}$/),
  width: z.int().min(1).max(20_000),
  height: z.int().min(1).max(20_000),
});
export type Logo = z.infer<typeof LogoSchema>;

/** What the tuner decided about the customer's summary. */
export const HandoverChoicesSchema = z.looseObject({
  customer: z.string().max(200).default(''),
  /** Who hands over, as it is to be printed. */
  shop: z.string().max(200).default(''),
  /** Free text on the sheet; null is the session's own note. */
  note: z.string().max(20_000).nullable().default(null),
  /** Entries that are not printed; the sheet says how many. */
  hiddenEntries: z.array(IdSchema).max(1000).default([]),
  form: z.enum(handoverForms).default('full'),
  paper: z.enum(papers).default('A4'),
  /** Null is the program's own. */
  language: z.enum(['en', 'de']).nullable().default(null),
  units: z.enum(handoverUnits).nullable().default(null),
  /** Full-throttle pulls that this customer drives on 100 km; null is unknown. */
  pullsPer100km: z.number().positive().max(1000).nullable().default(null),
  logo: LogoSchema.nullable().default(null),
});
export type HandoverChoices = z.infer<typeof HandoverChoicesSchema>;

/** Nothing decided yet. */
export const noHandoverChoices: HandoverChoices = HandoverChoicesSchema.parse({});
