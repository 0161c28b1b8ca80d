import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import { currentSchemaVersion, readSession } from '../../../core/session/index.ts';

const version0 = {
  schemaVersion: 0,
  id: 'old-day',
  title: 'Fenmoor hatch, first notebook',
  started: '2026-09-01T08:00:00.000Z',
  carMass_lb: 3000,
  changes: [
    { id: 'c0', what: 'baseline', runs: ['r1'] },
    { id: 'c1', what: 'colder plugs', runs: [] },
  ],
  weatherByHand: 'fog until ten',
};

describe('a session of version 0', () => {
  const { session, migratedFrom } = unwrap(readSession(version0));

  it('ends as a valid current session and says where it came from', () => {
    expect(migratedFrom).toBe(0);
    expect(session.schemaVersion).toBe(currentSchemaVersion);
  });

  it('a note added by hand survives', () => {
    expect(session.weatherByHand).toBe('fog until ten');
  });

  it('the mass is in kilograms and is still shown as it was typed', () => {
    expect(session.car.mass_kg).toBeCloseTo(1360.777, 3);
    expect(session.asTyped['car.mass_kg']).toEqual({ value: 3000, unit: 'lb' });
  });

  it('a change of an unknown kind keeps its words', () => {
    expect(session.ledger[1]).toMatchObject({ kind: 'other', title: 'colder plugs' });
  });
});

describe('what is no session of ours', () => {
  it('a newer version is refused and names both', () => {
    expect(readSession({ schemaVersion: currentSchemaVersion + 1 })).toMatchObject({
      problems: [{ code: 'session/newer-version', facts: { version: currentSchemaVersion + 1 } }],
    });
  });

  it.each([null, 3, 'x', [], {}, { schemaVersion: '1' }, { schemaVersion: -1 }, { schemaVersion: 0.5 }])(
    '%j has no version',
    (json) => {
      expect(readSession(json)).toMatchObject({ problems: [{ code: 'session/no-version' }] });
    },
  );

  it('names every field that is wrong', () => {
    const result = readSession({ schemaVersion: 1, id: '../x', name: '', car: { mass_kg: -1 } });
    const fields = result.ok ? [] : result.problems.map((p) => p.where?.field);
    expect(fields).toEqual(expect.arrayContaining(['id', 'name', 'car.mass_kg', 'ledger']));
  });

  it('an old file that lacks what its version promised is refused, not thrown', () => {
    expect(readSession({ schemaVersion: 0 })).toMatchObject({ ok: false });
  });
});
