import { fail, ok, type Result } from '../../result/index.ts';
import { type FormulaCard, input } from '../explain.ts';

/**
 * Rolling radius over free radius of a radial tyre under its load.  Common practice (0.96 to 0.98); the rolling
 * circumference that tyre makers print is 3.05 free diameters, which is 0.971.
 */
export const dynamicFactor = 0.97;

export type TyreSize = {
  /** [m] */
  readonly width: number;
  /** Height over width. */
  readonly aspect: number;
  /** [m] */
  readonly rimDiameter: number;
  /** Half the free diameter [m]. */
  readonly freeRadius: number;
  /** dynamicFactor times the free radius [m]. */
  readonly rollingRadius: number;
};

/**
 * Rolling radius from what stands on the sidewall: `225/45 R17`, `225/45ZR17 94W`, `P205/55R16`, `255/40-19`.
 *
 *   r = 0.97 (rim / 2 + width * aspect)
 *
 * @returns all lengths in m
 *
 * Valid:  metric car tyres, 100 to 400 mm wide, aspect 20 to 100, rims of 8 to 26 inches. Wear and pressure move
 *         the rolling radius by 1 to 2 %: a measured one is better.
 * Errors: power/bad-tyre where the text is not such a size.
 * Source: ISO 4000-1 for the marking (from memory); the factor is common practice.
 * Check:  225/45 R17: 0.97 (0.2159 + 0.10125) = 0.3076 m.
 */
export function tyreSize(text: string): Result<TyreSize> {
  const found =
    /^\s*(?:P|LT)?\s*(\d{3})\s*[/\s]\s*(\d{2,3})\s*-?\s*(?:Z?R|D|B|-|\/)?\s*-?\s*(\d{1,2}(?:[.,]\d)?)\b/i.exec(
      text,
    );
  const width = Number(found?.[1]) / 1000;
  const aspect = Number(found?.[2]) / 100;
  const rimDiameter = Number(found?.[3]?.replace(',', '.')) * 0.0254;
  const isTyre =
    width >= 0.1 &&
    width <= 0.4 &&
    aspect >= 0.2 &&
    aspect <= 1 &&
    rimDiameter >= 0.2032 &&
    rimDiameter <= 0.6604;
  if (!isTyre) return fail({ code: 'power/bad-tyre', facts: { text } });
  const freeRadius = rimDiameter / 2 + width * aspect;
  return ok({ width, aspect, rimDiameter, freeRadius, rollingRadius: dynamicFactor * freeRadius });
}

export const explainRollingRadius: FormulaCard = {
  formula: 'r = 0.97 (rim / 2 + width * aspect)',
  inputs: [
    input('rim', 'm', 'rim diameter'),
    input('width', 'm', 'nominal section width'),
    input('aspect', '1', 'section height over width'),
  ],
  source: 'marking as in ISO 4000-1 (from memory); factor 0.97 common practice',
  validRange: 'metric car tyres, worn or soft ones 1 to 2 % smaller',
};
