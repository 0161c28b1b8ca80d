import { cellsAt, names, rate_Hz, rowAt, rowCount, type Writing, written } from './invented-pull.ts';

const encode = (text: string) => new TextEncoder().encode(text);

function utf16(text: string, isBig: boolean): Uint8Array {
  const out = new DataView(new ArrayBuffer(2 + 2 * text.length));
  out.setUint16(0, 0xfeff, !isBig);
  for (let i = 0; i < text.length; i++) out.setUint16(2 + 2 * i, text.charCodeAt(i), !isBig);
  return new Uint8Array(out.buffer);
}

/** One byte a character, as code page 1252 and ISO 8859-1 have it: the degree sign is 0xB0. */
const latin1 = (text: string) => Uint8Array.from(text, (c) => c.charCodeAt(0));

const comma = (cell: string) => cell.replace('.', ',');
/** 1,234.5 */
const thousands = (cell: string, mark: string, decimal: string) => {
  const [whole = '', part] = cell.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, mark);
  return part === undefined ? grouped : `${grouped}${decimal}${part}`;
};
const at = (cells: string[], change: Readonly<Record<number, (cell: string) => string>>) =>
  cells.map((c, i) => change[i]?.(c) ?? c);
const stamp = (to: (t: number, i: number) => number): NonNullable<Writing['row']> => {
  return (cells, i) => [to(i / rate_Hz, i).toFixed(3), ...cells.slice(1)];
};

const record = (i: number) => Object.fromEntries(names.map((name, c) => [name, Number(cellsAt(i)[c])]));

const onItsSide = (row: (name: string, samples: string[]) => string[]) =>
  names
    .map((name, c) =>
      row(
        name,
        Array.from({ length: rowCount }, (_, i) => cellsAt(i)[c] ?? ''),
      ).join(','),
    )
    .join('\n');

/** Ways in which the same drive can be written down; each must give the same pull and the same power. */
export const styles: Readonly<Record<string, () => Uint8Array>> = {
  'mixed line ends': () => encode(written({ lineEnd: (i) => ['\n', '\r\n', '\r\n'][i % 3] ?? '\n' })),
  'old line ends of a carriage return alone': () => encode(written({ lineEnd: () => '\r' })),
  'blank lines between the rows': () => encode(written({ lineEnd: () => '\n\n' })),
  'semicolons and decimal commas': () =>
    encode(written({ separator: ';', row: (cells) => cells.map(comma) })),
  'tabs and decimal commas': () => encode(written({ separator: '\t', row: (cells) => cells.map(comma) })),
  'spaces that line up the columns': () =>
    encode(
      written({
        head: ['Time   RPM   Pedal   Boost   Speed   IAT   Lambda'],
        separator: '   ',
        row: (cells) => cells.map((c) => c.padStart(9)),
      }),
    ),
  'spaces that line up the columns, cells left empty': () =>
    encode(
      written({
        head: [
          ['Time', 'RPM', 'Pedal', 'Boost', 'Speed', 'IAT', 'Lambda'].map((n) => n.padStart(10)).join(''),
        ],
        separator: '',
        row: (cells, i) =>
          at(cells, { 3: (c) => (i % 11 ? c : ''), 5: (c) => (i % 20 ? '' : c) }).map((c) => c.padStart(10)),
      }),
    ),
  'the newest row first': () => {
    const [head = '', ...rows] = written().trimEnd().split('\n');
    return encode([head, ...rows.reverse()].join('\n'));
  },
  'a foot of lowest and highest values': () =>
    encode(`${written()}Min,0,0,-60,0,0,0.5\nMax,9000,100,200,250,90,2\n`),
  'lines of delimiters between the rows': () =>
    encode(written({ after: (i) => (i % 40 === 7 ? ',,,,,,' : null) })),
  'numbers that a spreadsheet is to take as text': () =>
    encode(written({ row: (cells) => cells.map((c) => `="${c}"`) })),
  'bars between the columns': () => encode(written({ separator: '|' })),
  'decimal commas, every cell quoted, commas between them': () =>
    encode(
      written({
        head: [names.map((n) => `"${n}"`).join(',')],
        row: (cells) => cells.map((c) => `"${comma(c)}"`),
      }),
    ),
  'stray delimiters at the end of some rows': () =>
    encode(written({ row: (cells, i) => (i % 3 ? cells : [...cells, '', '']) })),
  'stray delimiters at the end of most rows': () =>
    encode(written({ row: (cells, i) => (i % 3 ? [...cells, '', ''] : cells) })),
  'trailing columns without a name': () =>
    encode(written({ row: (cells, i) => [...cells, String(i % 7), 'x'] })),
  'trailing columns without a value': () =>
    encode(written({ head: [`${names.join(',')},Spare 1,Spare 2`], row: (cells) => [...cells, '', ''] })),
  'repeated headers': () => encode(written({ after: (i) => (i % 150 === 149 ? names.join(',') : null) })),
  'names, units and a group in three header rows': () =>
    encode(
      written({
        head: [
          'Clock,Engine,Driver,Engine,Vehicle,Engine,Engine',
          'Time,Engine Speed,Pedal,Boost,Vehicle Speed,Intake Air Temp,Lambda',
          's,rpm,%,kPa,km/h,°C,-',
        ],
      }),
    ),
  'a preamble of remarks and settings': () =>
    encode(
      written({
        head: [
          'Invented recorder',
          'Car;Fenmoor hatch',
          'Date,2027-03-14',
          'Remark,"third gear, closed road"',
          '',
          names.join(','),
        ],
      }),
    ),
  'two columns of one name': () =>
    encode(written({ head: [`${names.join(',')},Lambda`], row: (cells) => [...cells, cells[6] ?? ''] })),
  'thousands separators in quotes': () =>
    encode(written({ row: (cells) => at(cells, { 1: (c) => `"${thousands(c, ',', '.')}"` }) })),
  'thousands points and decimal commas': () =>
    encode(
      written({
        separator: ';',
        row: (cells) =>
          at(
            cells.map((c) => c),
            { 0: comma, 1: (c) => thousands(c, '.', ','), 2: comma, 3: comma, 4: comma, 5: comma, 6: comma },
          ),
      }),
    ),
  'thousands apostrophes': () =>
    encode(written({ row: (cells) => at(cells, { 1: (c) => thousands(c, "'", '.') }) })),
  'thousands spaces that do not break': () =>
    encode(written({ separator: ';', row: (cells) => at(cells, { 1: (c) => thousands(c, '\u00a0', '.') }) })),
  'missing cells here and there': () =>
    encode(
      written({
        row: (cells, i) =>
          at(cells, { 3: (c) => (i % 11 === 5 ? '' : c), 4: (c) => (i % 13 === 7 ? '' : c) }),
      }),
    ),
  'units glued to the numbers': () =>
    encode(
      written({
        head: ['Time,Engine Speed,Pedal,Boost,Vehicle Speed,Intake Air Temp,Lambda'],
        row: (cells) =>
          at(cells, {
            0: (c) => `${c}s`,
            1: (c) => `${c}rpm`,
            2: (c) => `${c}%`,
            3: (c) => `${c} kPa`,
            4: (c) => `${c} km/h`,
            5: (c) => `${c}°C`,
          }),
      }),
    ),
  'n/a, dashes and NaN for what was not measured': () =>
    encode(
      written({
        row: (cells, i) =>
          at(cells, {
            3: (c) => (i % 17 === 3 ? 'n/a' : c),
            5: (c) => (i % 19 === 3 ? '---' : c),
            6: (c) => (i % 23 === 3 ? 'NaN' : i % 29 === 5 ? '#N/A' : c),
          }),
      }),
    ),
  'on and off in a column': () =>
    encode(
      written({ head: [`${names.join(',')},Fan`], row: (cells, i) => [...cells, i > 300 ? 'ON' : 'OFF'] }),
    ),
  'slow sensors that fill every tenth row': () =>
    encode(
      written({ row: (cells, i) => at(cells, { 5: (c) => (i % 20 ? '' : c), 6: (c) => (i % 5 ? '' : c) }) }),
    ),
  'slow sensors that repeat their last value': () =>
    encode(
      written({
        row: (cells, i) =>
          at(cells, { 5: () => cellsAt(i - (i % 20))[5] ?? '', 6: () => cellsAt(i - (i % 5))[6] ?? '' }),
      }),
    ),
  'every third stamp twice': () => encode(written({ row: stamp((t, i) => (i % 3 === 2 ? t - 0.05 : t)) })),
  'a stamp that runs back': () => encode(written({ row: stamp((t, i) => (i === 240 ? t - 0.4 : t)) })),
  'two rows in the wrong order': () =>
    encode(written({ row: (_, i) => cellsAt(i === 240 ? 241 : i === 241 ? 240 : i) })),
  'a gap before the pull': () => encode(written({ row: (cells, i) => (i >= 60 && i < 110 ? null : cells) })),
  'a clock that starts anew after the pull': () =>
    encode(written({ row: stamp((t, i) => (i >= 450 ? t - 22.5 : t)) })),
  'a second table of other columns behind it': () =>
    encode(`${written()}\nLap,Sector (s),Remark\n1,34.2,warm\n2,33.9,warm\n`),
  'two recordings, each with its own preamble': () =>
    encode(
      `Recording 1\n${written()}\nRecording 2\n${names.join(',')}\n0.000,900,0,-60,0,30,1\n0.050,900,0,-60,0,30,1\n`,
    ),
  milliseconds: () =>
    encode(
      written({
        head: [names.join(',').replace('(s)', '(ms)')],
        row: (cells, i) => [String(i * 50), ...cells.slice(1)],
      }),
    ),
  'the time of day': () =>
    encode(
      written({
        row: (cells, i) => {
          const t = rowAt(i).t;
          return [
            `14:03:${String(Math.floor(t)).padStart(2, '0')}.${String(Math.round((t % 1) * 1000)).padStart(3, '0')}`,
            ...cells.slice(1),
          ];
        },
      }),
    ),
  'rows counted, the rate in the preamble': () =>
    encode(
      written({
        head: ['Sample rate: 20 Hz', '', ['Sample', ...names.slice(1)].join(',')],
        row: (cells, i) => [String(i), ...cells.slice(1)],
      }),
    ),
  'UTF-8 behind a byte order mark': () => encode(`\ufeff${written()}`),
  'UTF-16, little end first': () => utf16(written(), false),
  'UTF-16, big end first': () => utf16(written({ lineEnd: () => '\r\n' }), true),
  'a degree sign of one byte': () => latin1(written()),
  'miles per hour, psi and Fahrenheit': () =>
    encode(
      written({
        head: [
          'Time (s),Engine Speed (rpm),Pedal (%),Boost (psi),Vehicle Speed (mph),Intake Air Temp (°F),Lambda',
        ],
        row: (cells, i) => {
          const r = rowAt(i);
          return at(cells, {
            3: () => (r.boost_kPa / 6.894757).toFixed(3),
            4: () => (r.speed_km_h / 1.609344).toFixed(4),
            5: () => (r.intake_C * 1.8 + 32).toFixed(1),
          });
        },
      }),
    ),
  'numbers with an exponent and a plus sign': () =>
    encode(
      written({ row: (cells) => at(cells, { 1: (c) => Number(c).toExponential(6), 6: (c) => `+${c}` }) }),
    ),
  'a table of a web page': () => {
    const row = (cells: readonly string[]) =>
      `<tr>${cells.map((c) => `<td align="right">${c}</td>`).join('')}</tr>`;
    const head = names.map((n) => `<th><b>${n.replace('°', '&deg;')}</b></th>`).join('');
    const body = Array.from({ length: rowCount }, (_, i) => row(cellsAt(i))).join('\n');
    return encode(`<html><body><table><tr><td>Car</td><td>Fenmoor</td></tr></table>
      <table border="1"><tr>${head}</tr>${body}</table></body></html>`);
  },
  'JSON, an object a line': () =>
    encode(Array.from({ length: rowCount }, (_, i) => JSON.stringify(record(i))).join('\n')),
  'JSON, a list of objects on many lines, inside another': () =>
    encode(
      JSON.stringify({ car: 'Fenmoor', log: Array.from({ length: rowCount }, (_, i) => record(i)) }, null, 2),
    ),
  'JSON, a list of values for each name': () =>
    encode(
      JSON.stringify({
        channels: Object.fromEntries(
          names.map((name, c) => [name, Array.from({ length: rowCount }, (_, i) => Number(cellsAt(i)[c]))]),
        ),
      }),
    ),
  'a table on its side': () => encode(onItsSide((name, samples) => [name, ...samples])),
  'a table on its side, the units behind the names, text above it': () =>
    encode(
      `Invented recorder\n\n${onItsSide((name, samples) => {
        const [, what = '', unit = ''] = /^(.*?)(?: \((.*)\))?$/.exec(name) ?? [];
        return [what, unit, ...samples];
      })}`,
    ),
  'one value of one channel a row': () =>
    encode(
      `time,channel,value\n${Array.from({ length: rowCount }, (_, i) => {
        const [time, ...cells] = cellsAt(i);
        return cells.map((cell, c) => `${time},${names[c + 1]},${cell}`).join('\n');
      }).join('\n')}\n`,
    ),
  'one value of one channel a row, channel after channel, units beside them': () =>
    encode(
      `Signal;Zeit;Wert;Einheit\n${names
        .slice(1)
        .flatMap((name, c) => {
          const [, what = '', unit = ''] = /^(.*?)(?: \((.*)\))?$/.exec(name) ?? [];
          return Array.from({ length: rowCount }, (_, i) => {
            const cells = cellsAt(i);
            return [what, comma(cells[0] ?? ''), comma(cells[c + 1] ?? ''), unit || '-'].join(';');
          });
        })
        .join('\n')}\n`,
    ),
  'Swedish headings': () =>
    encode(
      written({
        separator: ';',
        head: [
          'Tid (s);Varvtal (varv/min);Gaspedalläge (%);Laddtryck (kPa);Fordonshastighet (km/h);Insugstemperatur (°C);Lambda',
        ],
        row: (cells) => cells.map(comma),
      }),
    ),
  'units, words and marks for none in most cells, semicolons and decimal commas': () =>
    encode(
      written({
        separator: ';',
        head: ['Zeit;Drehzahl;Pedal;Ladedruck;Tempo;Ansaugluft;Lambda;Pumpe;Bemerkung'],
        row: (cells, i) => [
          ...at(cells.map(comma), {
            0: (c) => `${c} s`,
            1: (c) => `${c} U/min`,
            2: (c) => `${c} %`,
            3: (c) => `${c} kPa`,
            4: (c) => `${c} km/h`,
            5: (c) => (i % 9 ? `${c} °C` : '---'),
            6: (c) => (i % 13 ? c : '#NV'),
          }),
          i > 300 ? 'EIN' : 'AUS',
          i % 300 ? '' : 'ok, weiter',
        ],
      }),
    ),
  'milliseconds since 1970': () =>
    encode(
      written({
        head: [['timestamp', ...names.slice(1)].join(',')],
        row: (cells, i) => [String(1_781_395_200_000 + i * 50), ...cells.slice(1)],
      }),
    ),
  'rows counted, the rate in their name': () =>
    encode(
      written({
        head: [['Sample (20 Hz)', ...names.slice(1)].join(',')],
        row: (cells, i) => [String(i), ...cells.slice(1)],
      }),
    ),
  'letters that a formula would use': () =>
    encode(written({ head: ['t,n,Pedal (%),Boost (kPa),Vehicle Speed (km/h),IAT (°C),Lambda'] })),
  'units in full words': () =>
    encode(
      written({
        head: [
          'Time (seconds),Engine Speed (revolutions per minute),Pedal (percent),Boost (kPa),GPS Speed (meters/second),Air (degrees Celsius),Lambda',
        ],
        row: (cells) => at(cells, { 4: (c) => (Number(c) / 3.6).toFixed(4) }),
      }),
    ),
  'a pedal counted to 255': () =>
    encode(
      written({
        head: [names.join(',').replace('Pedal (%)', 'Pedal')],
        row: (cells) => at(cells, { 2: (c) => (Number(c) * 2.55).toFixed(0) }),
      }),
    ),
  'a throttle in volts that falls as it opens': () =>
    encode(
      written({
        head: [names.join(',').replace('Pedal (%)', 'TPS (V)')],
        row: (cells) => at(cells, { 2: (c) => (4.5 - 0.039 * Number(c)).toFixed(3) }),
      }),
    ),
  'a last row cut short': () => encode(written().slice(0, -14)),
  'zero bytes at the end': () => encode(`${written()}${'\0'.repeat(4096)}`),
};
