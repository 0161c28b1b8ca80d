/** No session nests a tenth of this; far deeper, and writing it again would overflow the stack. */
const deepest = 500;
const quote = 0x22;
const backslash = 0x5c;
/** `[` and `{`, `]` and `}` differ in this bit alone. */
const curlyBit = 0x20;
const opening = 0x7b;
const closing = 0x7d;

/** True where a JSON text nests deeper than any session does. */
export function isTooDeep(text: Uint8Array): boolean {
  // Each level takes an opening and a closing bracket, so a short text cannot be deep.
  if (text.length <= 2 * deepest) return false;
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const byte = text[i] as number;
    if (byte === quote) {
      // On to the closing quote.
      while (++i < text.length && text[i] !== quote) if (text[i] === backslash) i++;
    } else if (byte >= 0x5b) {
      const bracket = byte | curlyBit;
      if (bracket === opening) {
        if (++depth > deepest) return true;
      } else if (bracket === closing) depth--;
    }
  }
  return false;
}
