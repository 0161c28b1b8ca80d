import { describe, expect, it } from 'vitest';
import type { PullEvidence } from '../../../core/compare/index.ts';
import { createSession, entryGates, type Session } from '../../../core/session/index.ts';

function session(patch: Partial<Session> = {}): Session {
  const now = '2027-03-14T09:00:00.000Z';
  return {
    ...createSession({ id: 's', baselineId: 'b', name: 'Invented', now, car: { mass_kg: 1400 } }),
    ...patch,
  };
}

function pull(curves: Record<string, number[]>): PullEvidence {
  return {
    isComplete: true,
    start: {},
    curves: Object.fromEntries(Object.entries(curves).map(([k, v]) => [k, Float64Array.from(v)])),
    events: { knockEvents: 0, knockRetard_rad: null },
  } as unknown as PullEvidence;
}

describe('entryGates', () => {
  it('needs no setup: lambda, duty and intake air are held against the limits of the session', () => {
    const gates = entryGates(session(), [
      pull({
        boost: [100e3, 110e3],
        lambda: [0.82, 0.91],
        injectorDuty: [0.5, 0.8],
        intakeTemperature: [300, 310],
      }),
    ]);
    const of = (q: string) => gates.find((g) => g.quantity === q);
    expect(of('lambda')).toMatchObject({ measured: 0.91, limit: 0.9, state: 'closed' });
    expect(of('injectorDuty')).toMatchObject({ measured: 0.8, limit: 0.85, state: 'near' });
    expect(of('intake')).toMatchObject({ measured: 310, state: 'open' });
    expect(of('knock')).toMatchObject({ measured: 0, state: 'open' });
  });

  it('measures closeness of the intake air from the air of the day', () => {
    const hot = [pull({ intakeTemperature: [329] })];
    const { conditions } = session();
    const at = (ambient_C: number | null) =>
      entryGates(session({ conditions: { ...conditions, ambient_C } }), hot).find(
        (g) => g.quantity === 'intake',
      );
    // Limit 60 C = 333.15 K: from 20 C 0.90 of the way, from 50 C 0.59.
    expect(at(null)?.closeness).toBeCloseTo((329 - 293.15) / 40, 6);
    expect(at(50)?.closeness).toBeCloseTo((329 - 323.15) / 10, 6);
  });

  it('says of an entry without pulls that nothing was measured', () => {
    const gates = entryGates(session(), []);
    expect(gates.length).toBeGreaterThanOrEqual(4);
    expect(gates.every((g) => g.state === 'unmeasured')).toBe(true);
  });
});
