import { execFileSync } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { findBrowser } from '../../../electron/print/index.ts';
import { askingHost } from '../../support/asking-host.ts';
import { fontsOutside, pdfObjects } from '../../support/pdf-objects.ts';
import { saidIn } from '../../support/said-in.ts';
import { sampleCopy, temporaryFolder } from '../../support/sample-copy.ts';
import { figuresOf } from './handover-figures.ts';

const date = '2027-03-15';
const place = temporaryFolder();
const asking = askingHost(place.folder);

async function written(format: 'html' | 'pdf', more: object = {}): Promise<Buffer> {
  const made = await asking.get('handover.export', { format, date, ...more });
  return Buffer.from(made.content, 'base64');
}

const browser = await findBrowser({ platform: process.platform, environment: process.env });
const has = (tool: string) => (process.env.PATH ?? '').split(':').some((p) => existsSync(join(p, tool)));
const tools = ['pdftotext', 'pdfinfo', 'pdffonts'].filter((tool) => !has(tool));
const missing = [...(browser === null ? ['a browser of the Chromium family'] : []), ...tools];

/** What a tool of poppler says of a PDF. */
function told(tool: string, pdf: Buffer, ...options: string[]): string {
  const file = join(place.folder, 'told.pdf');
  writeFileSync(file, pdf);
  return execFileSync(tool, [...options, file, ...(tool === 'pdftotext' ? ['-'] : [])]).toString();
}
const textOf = (pdf: Buffer) => told('pdftotext', pdf, '-raw').replace(/\s+/g, '');

let pdf: Buffer;
beforeAll(async () => {
  await asking.get('sessions.open', { folder: sampleCopy(place.folder) });
  if (browser !== null) pdf = await written('pdf');
}, 240_000);
afterAll(async () => {
  await asking.host.close();
  place.remove();
});

describe('the summary as PDF', () => {
  beforeEach(({ skip }) => skip(browser === null, 'no browser of the Chromium family here'));

  it('carries every font inside, and its structure for a screen reader', () => {
    const { fonts, outside } = fontsOutside(pdf);
    expect(fonts).toBeGreaterThan(1);
    expect(outside).toEqual([]);
    const objects = [...pdfObjects(pdf).values()];
    const catalog = objects.find((body) => /\/Type \/Catalog\b/.test(body)) ?? '';
    expect(catalog).toMatch(/\/Marked true/);
    expect(catalog).toMatch(/\/StructTreeRoot \d+ 0 R/);
    expect(catalog).toMatch(/\/Lang \(en\)/);
    for (const part of ['H1', 'H2', 'Table', 'TH', 'Figure'])
      expect(objects.filter((body) => new RegExp(`/S /${part}\\b`).test(body)).length, part).toBeGreaterThan(
        0,
      );
  });

  it('finds a font that is named and not carried', () => {
    const bare = '1 0 obj\n<</Type /Font\n/Subtype /Type1\n/BaseFont /Helvetica>>\nendobj\n';
    expect(fontsOutside(Buffer.from(bare))).toEqual({ fonts: 1, outside: ['1'] });
  });

  it('is the same bytes twice, and others in another language', async () => {
    expect((await written('pdf')).equals(pdf)).toBe(true);
    expect((await written('pdf', { language: 'de' })).equals(pdf)).toBe(false);
  }, 240_000);
});

describe('the summary as PDF, read by other programs', () => {
  beforeEach(({ skip }) => skip(missing.length > 0, `not on this machine: ${missing.join(', ')}`));

  it('holds every word and figure of the page as text', async () => {
    const text = textOf(pdf);
    const said = saidIn((await written('html')).toString()).filter((t) => /\d/.test(t));
    expect(said.length).toBeGreaterThan(150);
    // A page's foot may stand inside a cell that goes over the end of the page; none does.
    expect(said.filter((t) => !text.includes(t))).toEqual([]);
  });

  it('holds every figure of the session and of its ledger', async () => {
    const { session } = await asking.snapshot();
    const figures = figuresOf(session, await asking.get('ledger.get', { band: null }));
    expect(figures.length).toBeGreaterThan(50);
    const text = textOf(pdf);
    expect(figures.filter((ways) => !ways.some((way) => text.includes(way)))).toEqual([]);
  });

  it('is tagged, runs nothing, and bears the date of the sheet alone', () => {
    const info = told('pdfinfo', pdf);
    expect(info).toMatch(/Tagged:\s+yes/);
    expect(info).toMatch(/JavaScript:\s+no/);
    expect(info).toMatch(/CreationDate:.*Mar 15 .*2027/);
    const [, , ...fonts] = told('pdffonts', pdf).trim().split('\n');
    expect(fonts.length).toBeGreaterThan(1);
    // Columns from the right: object id (two), uni, sub, emb.
    expect(fonts.filter((line) => line.trim().split(/\s+/).at(-5) !== 'yes')).toEqual([]);
  });

  it.each(['A4', 'Letter'] as const)(
    'fits the one-page form on one sheet of %s',
    async (paper) => {
      const info = told('pdfinfo', await written('pdf', { form: 'one-page', paper, language: 'de' }));
      expect(info).toMatch(/Pages:\s+1\n/);
      expect(info).toMatch(paper === 'A4' ? /59[45]\.\d+ x 84[12]/ : /612 x 792/);
    },
    120_000,
  );
});
