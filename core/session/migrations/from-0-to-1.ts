/**
 * Version 0 was never released: it stands for the first notebook, in which a session was a flat list of changes
 * and the car's mass was in pounds. Frozen; owns its types and constants.
 */
type SessionV0 = {
  schemaVersion: 0;
  id: string;
  title: string;
  started: string;
  carMass_lb: number;
  changes: { id: string; what: string; runs: string[] }[];
  [key: string]: unknown;
};

const poundsToKilograms = 0.45359237;
const knownKinds = new Set(['baseline', 'spray', 'boost', 'spark', 'mixture', 'fluid', 'other', 'nothing']);

export function from0to1(old: Record<string, unknown>): Record<string, unknown> {
  const { title, started, carMass_lb, changes, ...kept } = old as SessionV0;
  return {
    ...kept,
    schemaVersion: 1,
    name: title,
    createdAt: started,
    car: { mass_kg: carMass_lb * poundsToKilograms },
    conditions: {},
    limits: {},
    asTyped: { 'car.mass_kg': { value: carMass_lb, unit: 'lb' } },
    ledger: changes.map((change) => ({
      id: change.id,
      kind: knownKinds.has(change.what) ? change.what : 'other',
      title: knownKinds.has(change.what) ? '' : change.what,
      runs: change.runs.map((runId) => ({ runId })),
      createdAt: started,
    })),
  };
}
