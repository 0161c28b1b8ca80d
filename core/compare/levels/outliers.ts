import { squaresAboutMean, tTwoSided } from '../statistics/index.ts';

/** A clean session of any size loses a pull to chance once in a hundred sessions. */
const falseAlarms = 0.01;

/**
 * The pull that stands furthest from its fellows of one setup, if chance alone would hardly place it there:
 * externally studentised residual against the pooled scatter of all others, with Bonferroni over all pulls that
 * could be named. In a setup of two nobody can say which is the odd one.
 *
 * @param groups  levels, one list per setup
 * @param looks   how many times the same pulls are looked at in different ways
 * @returns       group and place in it, and how far it stands from the others' mean; null where none does
 *
 * Source: Cook and Weisberg, Residuals and Influence in Regression (1982), section 2.2.
 */
export function oddPull(
  groups: readonly (readonly number[])[],
  looks = 1,
): { readonly group: number; readonly place: number; readonly distance: number } | null {
  const squares = groups.map((g) => (g.length > 1 ? squaresAboutMean(g) : 0));
  const total = squares.reduce((a, b) => a + b, 0);
  const degrees = groups.reduce((sum, g) => sum + Math.max(0, g.length - 1), 0) - 1;
  if (degrees < 2) return null;
  let worst: { group: number; place: number; distance: number } | null = null;
  let least = 1;
  let nameable = 0;
  groups.forEach((values, group) => {
    if (values.length < 3) return;
    nameable += values.length;
    values.forEach((value, place) => {
      const others = values.filter((_, i) => i !== place);
      const centre = others.reduce((a, b) => a + b, 0) / others.length;
      const without = (total - (squares[group] as number) + squaresAboutMean(others)) / degrees;
      const distance = value - centre;
      const t = distance / Math.sqrt(without * (1 + 1 / others.length));
      const p = Number.isFinite(t) ? tTwoSided(t, degrees) : distance === 0 ? 1 : 0;
      if (p < least) {
        least = p;
        worst = { group, place, distance };
      }
    });
  });
  return least * nameable * looks < falseAlarms ? worst : null;
}
