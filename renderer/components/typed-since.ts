/** So few characters are typed again in a breath (common practice). */
const fewCharacters = 5;

/** Characters of `now` that did not stand in `first`: what begins and ends alike is not counted. */
function typedOver(first: string, now: string): number {
  const shorter = Math.min(first.length, now.length);
  let start = 0;
  while (start < shorter && first[start] === now[start]) start++;
  let end = 0;
  while (end < shorter - start && first.at(-1 - end) === now.at(-1 - end)) end++;
  return now.slice(start, now.length - end).trim().length;
}

/**
 * Whether fields hold so much that was typed that nobody should have to type it again.
 *
 * @param first  texts of the fields as they opened
 * @param now    texts of the same fields, in the same order
 */
export function isMuchTyped(first: readonly string[], now: readonly string[]): boolean {
  const typed = now.reduce((sum, text, i) => sum + typedOver(first[i] ?? '', text), 0);
  return typed > fewCharacters;
}
