import { readdir, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { HandoverFont } from '../../core/handover/index.ts';

type Wanted = Omit<HandoverFont, 'data'> & { readonly folder: string; readonly stem: string };

const serif = '@fontsource-variable/literata/files';
const sans = '@fontsource-variable/atkinson-hyperlegible-next/files';
const wanted: readonly Wanted[] = [
  { family: 'serif', letters: 'latin', folder: serif, stem: 'literata-latin-wght-normal' },
  { family: 'serif', letters: 'latin-ext', folder: serif, stem: 'literata-latin-ext-wght-normal' },
  { family: 'serif', letters: 'greek', folder: serif, stem: 'literata-greek-wght-normal' },
  { family: 'sans', letters: 'latin', folder: sans, stem: 'atkinson-hyperlegible-next-latin-wght-normal' },
  {
    family: 'sans',
    letters: 'latin-ext',
    folder: sans,
    stem: 'atkinson-hyperlegible-next-latin-ext-wght-normal',
  },
];

/** Folders above this file, nearest first: the project's own, or the packed program's. */
function above(): string[] {
  const folders = [dirname(fileURLToPath(import.meta.url))];
  for (let i = 0; i < 4; i++) folders.push(dirname(folders[i] as string));
  return folders;
}

/** From the packages where they are, else from the built screens, which carry the same files under longer names. */
async function fontData(font: Wanted): Promise<string | null> {
  for (const folder of above()) {
    const packed = join(folder, 'node_modules', font.folder, `${font.stem}.woff2`);
    const bytes = await readFile(packed).catch(() => null);
    if (bytes) return bytes.toString('base64');
    const assets = join(folder, 'renderer', 'dist', 'assets');
    const names = await readdir(assets).catch(() => []);
    const built = names.find((n) => n.startsWith(`${font.stem}-`) && n.endsWith('.woff2'));
    if (built) return (await readFile(join(assets, built))).toString('base64');
  }
  return null;
}

let read: Promise<readonly HandoverFont[]> | null = null;

/** The fonts of the customer's summary, read once. Where a file is missing the reader's own fonts stand in. */
export function handoverFonts(): Promise<readonly HandoverFont[]> {
  read ??= Promise.all(
    wanted.map(async (font): Promise<HandoverFont[]> => {
      const data = await fontData(font);
      return data === null ? [] : [{ family: font.family, letters: font.letters, data }];
    }),
  ).then((fonts) => fonts.flat());
  return read;
}
