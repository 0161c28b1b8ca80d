import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { problemsOfSchema } from '../../../core/session/index.ts';
import { metricUnits, TypedValueSchema } from '../../../core/units/index.ts';
import { createShow, problemText } from '../../../core/words/index.ts';

/** What is said of a value that the schema refuses, in both languages. */
function said(schema: z.ZodType, value: unknown): { en: string; de: string } {
  const checked = z.object({ x: schema }).safeParse({ x: value });
  if (checked.success) throw new Error('the schema took it');
  const [problem] = problemsOfSchema(checked.error);
  const say = (language: 'en' | 'de') => problemText(problem, createShow(language, metricUnits)).message;
  return { en: say('en'), de: say('de') };
}

const cases: readonly [name: string, z.ZodType, unknown, en: RegExp, de: RegExp][] = [
  ['text for a number', z.number(), '7', /: a number is needed\.$/, /: hier muss eine Zahl stehen\.$/],
  ['nothing for a number', z.number(), undefined, /: a number is needed\.$/, /: hier muss eine Zahl/],
  ['a broken count', z.int(), 1.5, /: a whole number is needed/, /: hier muss eine ganze Zahl/],
  ['a number for a list', z.array(z.number()), 1, /: a list in brackets/, /: hier muss eine Liste/],
  ['too much', z.number().max(5), 6, /: it must be at most 5\./, /: der Wert muss höchstens 5 sein\./],
  [
    'not above zero',
    z.number().positive(),
    0,
    /: it must be above 0\./,
    /: der Wert muss größer als 0 sein\./,
  ],
  ['no text', z.string().min(1), '', /: at least 1 character must/, /: hier müssen mindestens 1 Zeichen/],
  ['long text', z.string().max(3), 'four', /: at most 3 characters may/, /: hier dürfen höchstens 3 Zeichen/],
  [
    'a long list',
    z.array(z.int()).max(1),
    [1, 2],
    /: at most 1 item may/,
    /: hier dürfen höchstens 1 Eintrag/,
  ],
  ['a word not known', z.enum(['up', 'down']), 'left', /: it must be one of “up”, “down”/, /: „up“, „down“/],
  ['a field not known', z.strictObject({}), { y: 1 }, /not known here: “y”/, /Unbekanntes: „y“/],
  ['no moment', z.iso.datetime(), 'noon', /: a moment like 2027-/, /: hier muss ein Zeitpunkt wie 2027-/],
  ['no unit', TypedValueSchema, { value: 1, unit: 'ell' }, /not a unit of this/, /diese Einheit kennt/],
  [
    'none of the forms',
    z.union([z.number(), z.null()]),
    'x',
    /does not have the form/,
    /Form passt hier nicht/,
  ],
];

describe('a field that does not fit is named in words of the language', () => {
  for (const [name, schema, value, en, de] of cases) {
    it(name, () => {
      const words = said(schema, value);
      expect(words.en).toMatch(en);
      expect(words.de).toMatch(de);
      expect(`${words.en} ${words.de}`).not.toMatch(/Invalid|Too |expected|received|undefined/);
    });
  }
});
