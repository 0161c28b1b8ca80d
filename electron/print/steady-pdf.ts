/**
 * A PDF with the moment of printing and the name of the printer replaced by the date that the sheet states, so
 * that the same sheet printed twice by the same browser is the same bytes. Lengths stay, so every offset in the
 * file still holds.
 *
 * Source: ISO 32000-1, 7.9.4 dates; 14.3.3 document information dictionary.
 *
 * @param date  ISO, `2027-03-14`
 */
export function steadyPdf(pdf: Uint8Array, date: string): Uint8Array {
  const text = Buffer.from(pdf).toString('latin1');
  const day = date.replaceAll('-', '');
  const steady = text
    .replace(/(\/(?:CreationDate|ModDate) ?\(D:)\d{14}/g, `$1${day}000000`)
    // The browser's own description of the machine is nobody's business.
    .replace(/\/Creator \(((?:[^()\\]|\\.)*)\)/, (whole, inner: string) => {
      const name = 'Onechange';
      return inner.length < name.length ? whole : `/Creator (${name.padEnd(inner.length)})`;
    });
  return Uint8Array.from(Buffer.from(steady, 'latin1'));
}
