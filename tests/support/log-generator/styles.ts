import type { LoggedTable } from './logger.ts';

/** How a table of numbers is written as text. */
export type TableStyle = {
  readonly delimiter: ',' | ';' | '\t' | '|' | ' ';
  readonly decimal: '.' | ',';
  readonly lineEnd: '\n' | '\r\n' | '\r' | 'mixed';
  readonly quotes: 'none' | 'all' | 'needed';
  readonly units: 'in-header' | 'in-row' | 'in-brackets';
  readonly preamble: readonly string[];
  readonly time: 's' | 'ms' | 'us' | 'min' | 'clock' | 'iso';
  readonly thousands: '' | "'" | '\u00a0';
  readonly encoding: 'utf-8' | 'utf-8-mark' | 'utf-16le' | 'utf-16be';
  readonly hasTrailingDelimiter: boolean;
  readonly repeatsHeader: boolean;
  readonly endsWithLineEnd: boolean;
};

const timeUnits = { s: 's', ms: 'ms', us: 'us', min: 'min', clock: '', iso: '' } as const;

/** The table in a style. Its first column is time in seconds. */
export function styledTable(table: LoggedTable, style: TableStyle): Uint8Array {
  const { delimiter, decimal } = style;
  const quoted = (text: string) =>
    style.quotes === 'all' || (style.quotes === 'needed' && text.includes(delimiter)) ? `"${text}"` : text;
  const number = (value: number) => {
    let text = String(value);
    if (style.thousands !== '' && Math.abs(value) >= 1000 && !text.includes('e')) {
      const [whole = '', fraction] = text.split('.');
      const grouped = whole.replace(/\B(?=(\d{3})+$)/g, style.thousands);
      text = fraction === undefined ? grouped : `${grouped}.${fraction}`;
    }
    return quoted(decimal === ',' ? text.replace('.', ',') : text);
  };
  const cell = (value: number, column: number) =>
    column === 0 ? quoted(timeText(value, style)) : number(value);
  const unitOf = (column: { unit: string }, index: number) =>
    index === 0 ? timeUnits[style.time] : column.unit;
  const heads = table.columns.map((c, i) => {
    const unit = unitOf(c, i);
    const name = style.delimiter === ' ' ? c.name.replaceAll(' ', '_') : c.name;
    if (unit === '' || style.units === 'in-row') return quoted(name);
    const joint = style.delimiter === ' ' ? '_' : ' ';
    return quoted(style.units === 'in-header' ? `${name}${joint}(${unit})` : `${name}${joint}[${unit}]`);
  });
  const end = style.hasTrailingDelimiter ? delimiter : '';
  const header = [heads.join(delimiter) + end];
  if (style.units === 'in-row')
    header.push(table.columns.map((c, i) => quoted(unitOf(c, i) || '-')).join(delimiter) + end);
  const rows = (table.columns[0]?.values ?? []).map(
    (_, r) => table.columns.map((c, i) => cell(c.values[r] ?? 0, i)).join(delimiter) + end,
  );
  if (style.repeatsHeader) rows.splice(Math.floor(rows.length / 2), 0, ...header);
  const lines = [...style.preamble, ...header, ...rows];
  const lineEnd = (i: number) => (style.lineEnd === 'mixed' ? (i % 3 === 0 ? '\r\n' : '\n') : style.lineEnd);
  const text = lines
    .map((l, i) => (i < lines.length - 1 || style.endsWithLineEnd ? l + lineEnd(i) : l))
    .join('');
  return encoded(text, style.encoding);
}

function timeText(seconds: number, style: TableStyle): string {
  const mark = (text: string) => (style.decimal === ',' ? text.replace('.', ',') : text);
  const ms = Math.round(seconds * 1000);
  switch (style.time) {
    case 's':
      return mark(String(seconds));
    case 'ms':
      return String(ms);
    case 'us':
      return String(ms * 1000);
    case 'min':
      return mark(String(seconds / 60));
    case 'clock':
      return mark(clockText(ms));
    case 'iso':
      return `2027-03-14T${clockText(ms)}Z`;
  }
}

function clockText(ms: number): string {
  const two = (n: number) => String(n).padStart(2, '0');
  const s = Math.floor(ms / 1000);
  return `${two(Math.floor(s / 3600))}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}.${String(ms % 1000).padStart(3, '0')}`;
}

function encoded(text: string, encoding: TableStyle['encoding']): Uint8Array {
  if (encoding === 'utf-8' || encoding === 'utf-8-mark')
    return new TextEncoder().encode(encoding === 'utf-8' ? text : `\ufeff${text}`);
  const bytes = new Uint8Array(2 * text.length + 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, encoding === 'utf-16le');
  for (let i = 0; i < text.length; i++)
    view.setUint16(2 * i + 2, text.charCodeAt(i), encoding === 'utf-16le');
  return bytes;
}
