import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { unwrap } from '../../../core/result/index.ts';
import {
  applyEdit,
  createSession,
  HandoverChoicesSchema,
  noHandoverChoices,
  SessionEditSchema,
  SessionSchema,
} from '../../../core/session/index.ts';
import { patchOf } from '../../../core/session/patch.ts';

const now = '2027-03-14T10:00:00.000Z';
const fresh = createSession({ id: 's1', baselineId: 'e0', name: 'Hatch', now, car: { mass_kg: 1400 } });

describe('a patch', () => {
  const patch = patchOf({ note: z.string().default('none'), count: z.int(), size: z.number().nullable() });

  it('holds what was written and nothing else', () => {
    expect(patch.parse({ size: null })).toEqual({ size: null });
    expect(patch.parse({})).toEqual({});
  });

  it('is checked as the field is, and takes no field that nobody knows', () => {
    expect(patch.safeParse({ note: 3 }).success).toBe(false);
    expect(patch.safeParse({ other: 3 }).success).toBe(false);
  });
});

describe('edits off the wire', () => {
  it('dropping an entry leaves its title, change and notes as they were', () => {
    const noted = { ...fresh, ledger: fresh.ledger.map((e) => ({ ...e, note: 'kept', privateNote: 'own' })) };
    const edit = SessionEditSchema.parse({ type: 'entry.set', entryId: 'e0', patch: { state: 'dropped' } });
    const after = unwrap(applyEdit({ session: noted, runs: {} }, edit));
    expect(after.session.ledger[0]).toEqual({ ...noted.ledger[0], state: 'dropped' });
  });

  it('a choice for the customer’s summary leaves the others as they were', () => {
    const handover = HandoverChoicesSchema.parse({ customer: 'K. Example', paper: 'Letter', handMade: 1 });
    const edit = SessionEditSchema.parse({ type: 'handover.set', patch: { shop: 'Yard', customer: '' } });
    const after = unwrap(applyEdit({ session: { ...fresh, handover }, runs: {} }, edit));
    expect(after.session.handover).toEqual({ ...handover, shop: 'Yard', customer: '' });
  });
});

describe('the choices for the summary', () => {
  it('are all undecided in a session that was written before there were any', () => {
    const { handover: _handover, ...old } = fresh;
    expect(SessionSchema.parse(old).handover).toEqual(noHandoverChoices);
  });

  it.each([
    'data:image/svg+xml;base64,AAAA',
    'data:text/html;base64,AAAA',
    'https://example.invalid/logo.png',
    'data:image/png;base64,AA"onload="x',
  ])('take no logo that could do more than print: %s', (dataUrl) => {
    const logo = { name: 'logo.png', dataUrl, width: 10, height: 10 };
    expect(HandoverChoicesSchema.safeParse({ logo }).success).toBe(false);
    expect(
      HandoverChoicesSchema.safeParse({ logo: { ...logo, dataUrl: 'data:image/png;base64,AAAA' } }).success,
    ).toBe(true);
  });
});
