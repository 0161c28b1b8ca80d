/** The objects of a PDF by their numbers, as text; for one that keeps its dictionaries out of compressed streams. */
export function pdfObjects(pdf: Uint8Array): ReadonlyMap<string, string> {
  const text = Buffer.from(pdf).toString('latin1');
  const found = new Map<string, string>();
  for (const [, number = '', body = ''] of text.matchAll(/(?<=^|\n)(\d+) 0 obj\s(.*?)endobj/gs))
    found.set(number, body);
  return found;
}

/**
 * Fonts of a PDF whose letters are not in the file: neither drawn in it letter by letter nor as a font file.
 *
 * Source: ISO 32000-1, 9.6.5 Type 3 fonts, 9.7 composite fonts, 9.9 embedded font programs.
 */
export function fontsOutside(pdf: Uint8Array): {
  readonly fonts: number;
  readonly outside: readonly string[];
} {
  const objects = pdfObjects(pdf);
  const fonts = [...objects].filter(([, body]) => /\/Type \/Font\b(?!Desc)/.test(body));
  const isInside = (body: string) => {
    if (/\/Subtype \/Type3\b/.test(body)) return /\/CharProcs\b/.test(body);
    // Its letters are those of its descendant, a font of the list itself.
    if (/\/Subtype \/Type0\b/.test(body)) return /\/DescendantFonts\b/.test(body);
    const descriptor = objects.get(/\/FontDescriptor (\d+) 0 R/.exec(body)?.[1] ?? '') ?? '';
    return /\/FontFile[23]? \d+ 0 R/.test(descriptor);
  };
  return {
    fonts: fonts.length,
    outside: fonts.flatMap(([number, body]) => (isInside(body) ? [] : [number])),
  };
}
