/** Signs that a page spells out, as far as headers hold them. */
const named: Readonly<Record<string, string>> = {
  nbsp: ' ',
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  deg: '°',
  micro: 'µ',
  lambda: 'λ',
  auml: 'ä',
  ouml: 'ö',
  uuml: 'ü',
  Auml: 'Ä',
  Ouml: 'Ö',
  Uuml: 'Ü',
  szlig: 'ß',
  eacute: 'é',
  egrave: 'è',
  agrave: 'à',
  sup2: '²',
  sup3: '³',
  middot: '·',
  minus: '-',
};

/**
 * Rows of cells of the largest table of a web page, as programs write one that call it a spreadsheet. A page cut short
 * gives the rows that are whole; a page without a table gives none.
 */
export function rowsOfWebPage(text: string): string[][] {
  const tables = text.split(/<table\b/i).slice(1);
  return tables.map(rowsOf).reduce<string[][]>((most, rows) => (rows.length > most.length ? rows : most), []);
}

function rowsOf(table: string): string[][] {
  const rows: string[][] = [];
  for (const part of table.split(/<tr\b/i).slice(1)) {
    const row: string[] = [];
    for (const cell of part.split(/<t[dh]\b/i).slice(1)) {
      const open = cell.indexOf('>');
      const end = cell.search(/<\/t[dhr]|<t[rdh]\b|<\/table|<\/tbody|<\/thead/i);
      row.push(plainText(cell.slice(open + 1, end < 0 ? undefined : end)));
      const span = /^[^>]*\bcolspan\s*=\s*["']?(\d{1,3})/i.exec(cell)?.[1];
      for (let i = 1; i < Number(span ?? 1); i++) row.push('');
    }
    if (row.length > 0) rows.push(row);
  }
  return rows;
}

function plainText(html: string): string {
  return html
    .replace(/<[^>]*>/g, ' ')
    .replace(/&(?:#(\d{1,6})|#x([0-9a-f]{1,5})|([a-z0-9]{2,8}));/gi, (all, decimal, hex, name) => {
      if (name !== undefined) return named[name] ?? all;
      return String.fromCodePoint(Math.min(0x10ffff, Number.parseInt(decimal ?? hex, decimal ? 10 : 16)));
    })
    .replace(/\s+/g, ' ')
    .trim();
}
