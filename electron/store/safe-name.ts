/** Names that Windows keeps for devices, with or without an extension. */
const deviceName = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³]|conin\$|conout\$)(\..*)?$/i;
/** Bytes of UTF-8. Linux allows 255 for one name; a shorter one leaves room in Windows' 260 for the whole path. */
const longest = 100;

/**
 * A folder or file name that Windows, macOS and Linux all take and give back unchanged, as near to `name` as
 * that allows. Never empty, never `.` or `..`, never with a separator, so it cannot leave its folder.
 *
 * Source: Microsoft, Naming Files, Paths, and Namespaces; POSIX.1-2017, 3.170 Filename.
 */
export function safeFolderName(name: string, fallback = 'session'): string {
  const plain = name
    // macOS stores decomposed letters; one form for all keeps two names that look alike from being two.
    .normalize('NFC')
    .toWellFormed()
    // Separators and what Windows refuses; controls; marks that turn the reading direction or show nothing.
    .replace(/[<>:"/\\|?*]/g, '-')
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\u200b\u200c\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff\ufffd]/gu, ' ')
    // Joins emoji to one; anywhere else it only hides.
    .replace(/(?<!\p{Extended_Pictographic}\p{M}*\p{EMod}?)\u200d|\u200d(?!\p{Extended_Pictographic})/gu, '')
    .replace(/\s+/g, ' ')
    // A leading dot hides a folder, a leading dash reads as an option, Windows drops trailing dots and blanks.
    .replace(/^[\s.~-]+/, '');
  const trimmed = cutToBytes(plain, longest).replace(/[\s.]+$/, '');
  if (trimmed === '') return fallback;
  return deviceName.test(trimmed) ? `${fallback} ${trimmed}` : trimmed;
}

/**
 * True for a name that every system takes as it is. Stricter than what one disk allows, looser than
 * `safeFolderName`, which also makes names pretty.
 */
export function isPortableName(name: string): boolean {
  if (name === '' || Buffer.byteLength(name) > 255 || !name.isWellFormed()) return false;
  return !/[<>:"/\\|?*\p{Cc}]/u.test(name) && !/[\s.]$/.test(name) && !deviceName.test(name);
}

/** More sessions of one name than anybody keeps in one folder. */
export const mostOfOneName = 1000;

/** The n-th name to try where the earlier ones are taken: `Fenmoor`, `Fenmoor (2)`. */
export function numberedName(name: string, n: number): string {
  if (n <= 1) return name;
  const suffix = ` (${n})`;
  return cutToBytes(name, longest - suffix.length).trimEnd() + suffix;
}

/** Lower-case ASCII letters, digits and single dashes: for ids that also stand in web addresses. */
export function slug(name: string, fallback: string, length = 40): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, length)
    .replace(/^-+|-+$/g, '');
  if (plain === '') return fallback;
  return deviceName.test(plain) ? `${fallback}-${plain}` : plain;
}

/** Cuts between characters as a reader sees them, so that no emoji is left in halves. */
function cutToBytes(text: string, limit: number): string {
  let bytes = 0;
  let cut = '';
  for (const { segment } of new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)) {
    bytes += Buffer.byteLength(segment);
    if (bytes > limit) break;
    cut += segment;
  }
  return cut;
}
