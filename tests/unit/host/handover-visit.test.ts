import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HandoverFactsSchema } from '../../../core/handover/index.ts';
import type { Session } from '../../../core/session/index.ts';
import { askingHost } from '../../support/asking-host.ts';
import { contentsOf } from '../../support/folder-contents.ts';
import { sampleCopy, temporaryFolder } from '../../support/sample-copy.ts';

const date = '2027-03-15';
const place = temporaryFolder();
const asking = askingHost(place.folder);

/** The sample as if it were another day of the same car, with what is to differ. */
function earlierVisit(id: string, change: (session: Session) => void = () => undefined): string {
  const folder = sampleCopy(place.folder, id);
  const file = join(folder, 'session.json');
  const session = JSON.parse(readFileSync(file, 'utf8')) as Session;
  change(Object.assign(session, { id, name: id, createdAt: '2026-10-02T09:00:00.000Z' }));
  writeFileSync(file, JSON.stringify(session));
  return folder;
}

async function written(format: 'html' | 'csv' | 'json', against?: string, language: 'en' | 'de' = 'en') {
  const made = await asking.get('handover.export', { format, date, language, against });
  return Buffer.from(made.content, 'base64').toString();
}

async function visitOf(against: string) {
  return HandoverFactsSchema.parse(JSON.parse(await written('json', against))).visit;
}

beforeAll(async () => {
  await asking.get('sessions.open', { folder: sampleCopy(place.folder) });
});
afterAll(async () => {
  await asking.host.close();
  place.remove();
});

describe('this visit against the last one of the same car', () => {
  it('lays power side by side where all is the same, and never calls a difference proven', async () => {
    const folder = earlierVisit('alike', ({ ledger }) => {
      // Left a step earlier than today: the last kept change of that day was dropped.
      const last = ledger.findLast((e) => e.state === 'kept');
      if (last) last.state = 'dropped';
    });
    const before = await contentsOf(folder);
    const visit = await visitOf(folder);
    expect(await contentsOf(folder)).toEqual(before);
    expect(visit?.obstacles).toEqual([]);
    const power = Object.fromEntries((visit?.power ?? []).map((p) => [p.what, p]));
    // The same pulls on both days.
    expect(power.baseline?.difference_kW).toBe(0);
    expect(power.baseline?.now?.mean_kW).toBe(power.baseline?.last?.mean_kW);
    expect(power['as-left']?.last?.mean_kW).not.toBe(power['as-left']?.now?.mean_kW);
    for (const p of visit?.power ?? []) {
      // Each figure leaves with six digits.
      expect(p.difference_kW).toBeCloseTo((p.now?.mean_kW ?? 0) - (p.last?.mean_kW ?? 0), 2);
      expect(p.differenceHalf_kW).toBeCloseTo(Math.hypot(p.now?.half_kW ?? 0, p.last?.half_kW ?? 0), 3);
      expect(p.isProven).toBe(false);
    }
    expect(await written('html', folder)).toContain('No difference in this table is proven.');
    expect(await written('html', folder, 'de')).toContain('Kein Unterschied in dieser Tabelle ist belegt.');
    expect(await written('csv', folder)).toMatch(/\r?\nvisit power\r?\n/);
  }, 240_000);

  it('names everything that forbids it, and compares no power', async () => {
    const folder = earlierVisit('unlike', (session) => {
      Object.assign(session.car, { mass_kg: 1600, rollingRadius_m: 0.3, correction: 'SAE J1349' });
      Object.assign(session.conditions, { place: null, ambient_C: 30 });
    });
    const visit = await visitOf(folder);
    expect(visit?.obstacles).toEqual(
      expect.arrayContaining(['correction', 'air', 'mass', 'tyre', 'place'] as const),
    );
    expect(visit?.conditions.find((r) => r.code === 'place')).toMatchObject({ last: null, state: 'unknown' });
    expect(visit?.power).toEqual([]);
    const html = await written('html', folder);
    expect(html).toContain('The power of the two visits is not compared.');
    // Letters of the fonts may spell anything.
    const said = html.replace(/<style>.*?<\/style>/s, '');
    expect(said).not.toMatch(/NaN|undefined|null/);
    expect(said).not.toContain('Mean wheel power of the two days');
  }, 240_000);

  it('takes a mass that differs by no more than it was known to for the same', async () => {
    const rowOf = async (id: string, mass_kg: number) => {
      const visit = await visitOf(earlierVisit(id, ({ car }) => Object.assign(car, { mass_kg })));
      return visit?.conditions.find((r) => r.code === 'mass')?.state;
    };
    // 15 kg each: hypot(15, 15) = 21.2 kg.
    expect(await rowOf('near', 1441)).toBe('same');
    expect(await rowOf('far', 1442)).toBe('differs');
  }, 240_000);

  it('says what was set otherwise, and does not set one origin of spark against another', async () => {
    const visit = await visitOf(
      earlierVisit('set-otherwise', ({ setup, tables }) => {
        if (setup?.fluidSystem.mix) setup.fluidSystem.mix.methanol_percent = 30;
        for (const table of tables)
          if (table.kind === 'spark') table.now = table.now.replace('\t17.5\t', '\t17.0\t');
      }),
    );
    const state = (code: string) => visit?.settings.find((r) => r.code === code)?.state;
    expect([state('fluid'), state('fuel'), state('spark')]).toEqual(['differs', 'same', 'own-origin']);
    expect(visit?.sparkCells).toBe(1);
  }, 240_000);

  it('says where the other visit is not the earlier one', async () => {
    const late = earlierVisit('late', (session) => {
      session.createdAt = '2027-05-01T09:00:00.000Z';
    });
    expect((await visitOf(late))?.order).toBe('later');
    const html = await written('html', late);
    expect(html).toContain('was not begun before the one of this sheet');
    expect(html).toContain('Against another visit');
    expect(html).not.toContain('Last visit');
    expect((await visitOf(earlierVisit('early')))?.order).toBe('earlier');
  }, 240_000);

  it('refuses to lay a session beside itself, and a folder that is none', async () => {
    const itself = join(place.folder, 'fenmoor-hatch');
    expect(await asking.codeOf('handover.make', { against: itself })).toBe('handover/visit-is-this-one');
    expect(await asking.codeOf('handover.make', { against: place.folder })).toBe('store/not-a-session');
  });

  it('says nothing of an earlier visit where none was named', async () => {
    expect(HandoverFactsSchema.parse(JSON.parse(await written('json'))).visit).toBeNull();
    expect(await written('html')).not.toContain('Against the last visit');
  });
});
