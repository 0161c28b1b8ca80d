/** No session nests a tenth of this; far deeper, and writing it again would overflow the stack. */
const deepest = 500;
const [quote, backslash] = [0x22, 0x5c];
const opening = new Set([0x5b, 0x7b]);
const closing = new Set([0x5d, 0x7d]);

/** True where a JSON text nests deeper than any session does. */
export function isTooDeep(text: Uint8Array): boolean {
  // Each level takes an opening and a closing bracket, so a short text cannot be deep.
  if (text.length <= 2 * deepest) return false;
  let depth = 0;
  let isInString = false;
  for (let i = 0; i < text.length; i++) {
    const byte = text[i] ?? 0;
    if (isInString) {
      if (byte === backslash) i++;
      else if (byte === quote) isInString = false;
    } else if (byte === quote) isInString = true;
    else if (opening.has(byte)) {
      if (++depth > deepest) return true;
    } else if (closing.has(byte)) depth--;
  }
  return false;
}
