import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

const whenLoaded: readonly (readonly [RegExp, string])[] = [
  [/^plotly/, 'with the first plot'],
  [/^temml/, 'with the first formula shown'],
  [/^number/, 'with the first channel by formula'],
  [/\.woff2$/, 'as its letters occur'],
];

/** What the built screens weigh, largest first [kB of 1000 bytes], and when each part is fetched. */
export function bundleTable(folder: string): readonly string[] {
  const shell = readFileSync(join(folder, 'index.html'), 'utf8');
  const files = readdirSync(join(folder, 'assets')).map((name) => {
    const bytes = readFileSync(join(folder, 'assets', name));
    const when = shell.includes(name)
      ? 'at once'
      : (whenLoaded.find(([pattern]) => pattern.test(name))?.[1] ?? 'later');
    // Fonts are compressed already.
    const zipped = name.endsWith('.woff2') ? bytes.length : gzipSync(bytes, { level: 9 }).length;
    return { name, raw: bytes.length, zipped, when };
  });
  const kB = (bytes: number) => (bytes / 1000).toFixed(1).padStart(8);
  const line = (name: string, raw: number, zipped: number, when: string) =>
    `${name.padEnd(62)} ${kB(raw)} ${kB(zipped)}  ${when}`;
  const atOnce = files.filter(({ when }) => when === 'at once');
  const sum = (of: readonly { raw: number; zipped: number }[], part: 'raw' | 'zipped') =>
    of.reduce((total, file) => total + file[part], 0);
  return [
    `${'file'.padEnd(62)} ${'raw kB'.padStart(8)} ${'gzip kB'.padStart(8)}  fetched`,
    ...files
      .sort((a, b) => b.raw - a.raw)
      .map(({ name, raw, zipped, when }) => line(name, raw, zipped, when)),
    line('all that is fetched at once', sum(atOnce, 'raw'), sum(atOnce, 'zipped'), ''),
    line('all', sum(files, 'raw'), sum(files, 'zipped'), ''),
  ];
}
