/**
 * Text as a CSS string that can end neither itself nor the style element: everything but ASCII letters, digits and
 * blanks is written by its code point.
 *
 * Source: CSS Syntax Module Level 3, 4.3.7, consume an escaped code point.
 */
export function cssText(text: string): string {
  const plain = text.replace(/\p{Cc}/gu, ' ').toWellFormed();
  const escaped = Array.from(plain, (c) =>
    /^[A-Za-z0-9 ]$/.test(c) ? c : `\\${(c.codePointAt(0) ?? 0).toString(16)} `,
  );
  return `"${escaped.join('')}"`;
}
