import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { HtmlValidate } from 'html-validate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type {
  RequestContext,
  RequestInput,
  RequestName,
  RequestOutput,
} from '../../../core/contract/index.ts';
import { HandoverFactsSchema, handoverJsonSchema } from '../../../core/handover/index.ts';
import { type Result, unwrap } from '../../../core/result/index.ts';
import { createHost, preferencesInMemory } from '../../../electron/host/index.ts';
import { saidIn } from '../../support/said-in.ts';
import { sampleCopy, temporaryFolder } from '../../support/sample-copy.ts';

const context: RequestContext = { requestId: 'test', signal: { aborted: false }, progress: () => undefined };
const date = '2027-03-15';
const hostile =
  '<script>alert(1)</script><img src="https://x.invalid/a.png" onerror=alert(1)>"\'&=1+1</style>';

const place = temporaryFolder();
const host = createHost({
  version: 'test',
  shell: 'terminal',
  sessionsFolder: place.folder,
  sampleFolder: null,
  preferences: preferencesInMemory(),
  now: () => '2027-03-15T10:00:00.000Z',
  newId: () => 'new',
});

async function ask<N extends RequestName>(name: N, input: RequestInput<N>): Promise<RequestOutput<N>> {
  return unwrap((await host.handle(name, input, context)) as Result<RequestOutput<N>>);
}

async function written(format: 'html' | 'csv' | 'json', more: object = {}): Promise<Buffer> {
  const made = await ask('handover.export', { format, date, ...more });
  return Buffer.from(made.content, 'base64');
}

let session: RequestOutput<'sessions.open'>['session'];
beforeAll(async () => {
  session = (await ask('sessions.open', { folder: sampleCopy(place.folder) })).session;
});
afterAll(async () => {
  await host.close();
  place.remove();
});

describe('the customer’s summary of the sample', () => {
  it('is the same bytes twice, and another date changes nothing but the date', async () => {
    const first = (await written('html')).toString();
    expect((await written('html')).toString()).toBe(first);
    const later = (await written('html', { date: '2027-04-02' })).toString();
    expect(later).not.toBe(first);
    // In the foot's CSS the month is written as it reads, its blanks too.
    expect(later.replaceAll('2 April 2027', '15 March 2027')).toBe(first);
  });

  it('is other bytes as soon as the session is another', async () => {
    for (const format of ['html', 'json', 'csv'] as const) {
      const before = await written(format);
      const note = { type: 'handover.set' as const, patch: { note: `Changed for the ${format}.` } };
      await ask('session.edit', { edits: [note] });
      const after = await written(format);
      expect(after.equals(before), format).toBe(false);
      expect(after.toString()).toContain(note.patch.note);
      await ask('session.edit', { edits: [{ type: 'handover.set', patch: { note: null } }] });
      expect((await written(format)).equals(before), format).toBe(true);
    }
  });

  it('keeps to the schema that the terminal prints, by the reading of another library', async () => {
    const check = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(
      handoverJsonSchema() as object,
    );
    const facts = JSON.parse((await written('json')).toString()) as { changes: object[]; method: object };
    check(facts);
    expect(check.errors ?? []).toEqual([]);
    // It refuses what does not fit, so that the sentence above says something.
    for (const spoilt of [
      { ...facts, version: '1' },
      { ...facts, method: undefined },
      { ...facts, changes: [{ ...facts.changes[1], effect_kW: '6.8' }] },
    ])
      expect(check(JSON.parse(JSON.stringify(spoilt)))).toBe(false);
  });

  it('is valid HTML in both forms, papers and languages', async () => {
    const validator = new HtmlValidate({
      extends: ['html-validate:recommended', 'html-validate:document'],
      rules: { 'no-raw-characters': 'off', 'no-inline-style': 'error', 'long-title': 'off' },
    });
    for (const form of ['full', 'one-page'] as const)
      for (const language of ['en', 'de'] as const) {
        const html = (await written('html', { form, language, paper: 'Letter' })).toString();
        const report = await validator.validateString(html);
        const found = report.results.flatMap((r) => r.messages.map((m) => `${m.ruleId}: ${m.message}`));
        expect(found, `${form} ${language}`).toEqual([]);
        expect(html).toContain(`<html lang="${language}">`);
        expect(html).toContain('size:Letter');
      }
  }, 240_000);

  it('holds what the session holds', async () => {
    const facts = HandoverFactsSchema.parse(JSON.parse((await written('json')).toString()));
    const ledger = await ask('ledger.get', { band: null });
    expect(facts.result?.effect_kW).toBeCloseTo((ledger.total?.effect ?? 0) / 1e3, 3);
    expect(facts.changes.map((c) => c.pulls)).toEqual(ledger.lines.map((l) => l.pulls));
    expect(facts.asLeft).toMatchObject({
      boost_kPa: 110,
      sprayStart_kPa: 40,
      sprayFull_kPa: 100,
      spark_deg: 2,
      lambda: 0.82,
      nozzles: [{ name: 'N140', flow_mL_min: 140, ratedPressure_kPa: 700 }],
      mix: { methanol_percent: 50, by: 'poured' },
    });
    // The logs of the last entry show more boost than was declared: the sheet must not hide it.
    expect(facts.asLeft.boostMeasured_kPa).toBeGreaterThan(115);
    expect(facts.protection.fallbackBoost_kPa).toBe(100);
    expect(facts.fluid.tank_L).toBe(4);
    expect(facts.limits.map((l) => l.code)).toContain('not-judged');
    expect(facts.changes[5]).toMatchObject({ verdict: 'not-comparable', effect_kW: null });
  });

  it('proves how far the car moved over the day by the band, though no one change did it', async () => {
    const { curves, limits } = HandoverFactsSchema.parse(JSON.parse((await written('json')).toString()));
    const ids = session.ledger.map((e) => e.id);
    const [before, after] = [ids[0] ?? '', ids.at(-1) ?? ''];
    const verdict = await ask('entries.compare', { before, after, band: null });
    // As a verdict the two are not comparable, for one reason: more than one thing was changed between them.
    expect(verdict.reasons.map((r) => r.code)).toEqual(['compare/more-than-one']);
    expect(limits.map((l) => l.code)).not.toContain('otherwise');
    const isAbove = (curves?.differenceLow_kW ?? []).map((low) => low !== null && low > 0);
    expect(isAbove.every(Boolean)).toBe(true);
    expect(curves?.proven).toEqual([
      { from_rpm: curves?.engineSpeed_rpm[0], to_rpm: curves?.engineSpeed_rpm.at(-1), sign: 1 },
    ]);
    const html = (await written('html')).toString();
    expect(html).toMatch(/<span class="gain">At the wheels the car gained/);
    expect(html).toMatch(/>proven<\/text><rect/);
  });

  it('watches the spray only where it was on', async () => {
    const facts = HandoverFactsSchema.parse(JSON.parse((await written('json')).toString()));
    const pressure = facts.gates.find((g) => g.quantity === 'fluidPressure');
    expect(pressure?.closestEntry).toBeGreaterThan(0);
    expect(pressure?.closest).toBeGreaterThan(800);
  });

  it('keeps a dated copy in the session’s folder', async () => {
    const made = await ask('handover.export', { format: 'csv', date });
    expect(made.savedAs).toBe(`handover/${made.fileName}`);
    const kept = readFileSync(join(place.folder, 'fenmoor-hatch', 'handover', made.fileName));
    expect(kept.toString('base64')).toBe(made.content);
  });
});

describe('markup, formulas and private notes in a session', () => {
  beforeAll(async () => {
    const ids = session.ledger.map((e) => e.id);
    await ask('session.edit', {
      edits: [
        { type: 'session.rename', name: hostile },
        { type: 'session.note', note: hostile },
        { type: 'car.set', car: { ...session.car, name: hostile } },
        { type: 'handover.set', patch: { customer: hostile, shop: `=${hostile}`, note: null } },
        ...ids.map((entryId) => ({
          type: 'entry.set' as const,
          entryId,
          patch: { title: `=${hostile}`, note: `@${hostile}`, privateNote: 'SECRET' },
        })),
        {
          type: 'setup.set',
          setup: session.setup && {
            ...session.setup,
            fluidSystem: {
              ...session.setup.fluidSystem,
              nozzles: session.setup.fluidSystem.nozzles.map((n) => ({ ...n, name: hostile.slice(0, 60) })),
              fitted: [hostile.slice(0, 60)],
            },
          },
        },
      ],
    });
  });

  it('do nothing in the page', async () => {
    for (const form of ['full', 'one-page'] as const) {
      const html = (await written('html', { form })).toString();
      expect(html).toContain('&lt;script&gt;');
      expect(html).not.toMatch(/<(script|link|iframe|object|embed|base|form|img)\b/i);
      expect(html).not.toMatch(/<[^>]*\s(?:href|on\w+)\s*=\s*/i);
      // Fonts inside the file, and marks inside a drawing, are all that a style or a drawing refers to.
      expect(html).not.toMatch(/url\((?!#|data:font\/woff2;base64,)/i);
      expect(html.match(/<\/style>/g)).toHaveLength(1);
      expect(html).not.toContain('SECRET');
    }
  });

  it('do nothing in the CSV, and stand whole in the JSON', async () => {
    const csv = (await written('csv')).toString();
    expect(csv).not.toMatch(/(^|,)"?[=@+]/m);
    expect(csv).toContain("'=");
    expect(csv).not.toContain('SECRET');
    const json = (await written('json')).toString();
    expect(json).not.toContain('SECRET');
    expect(HandoverFactsSchema.parse(JSON.parse(json)).customer).toBe(hostile);
  });

  it('make a name of file that every system takes', async () => {
    await written('json');
    for (const name of readdirSync(join(place.folder, 'fenmoor-hatch', 'handover')))
      expect(name).toMatch(/^[a-z0-9.-]+$/);
  });
});

describe('a session with nothing noted', () => {
  it('says what is unknown and claims nothing', async () => {
    await ask('sessions.create', { name: 'Bare', car: { mass_kg: 1400 } });
    const html = (await written('html')).toString();
    const text = saidIn(html).join(' ');
    expect(text).toContain('notnoted');
    expect(text).toContain('Thesetupsheetofthissessionisempty');
    expect(text).toContain('nothingisclaimed');
    expect(text).toContain('Notknown:');
    expect(text).not.toMatch(/NaN|undefined|null|Infinity/);
    const facts = HandoverFactsSchema.parse(JSON.parse((await written('json')).toString()));
    expect(facts).toMatchObject({ engine: null, result: null, fit: null, fluid: { freezing_C: null } });
  });
});
