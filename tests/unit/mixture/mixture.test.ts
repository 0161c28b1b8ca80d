import { describe, expect, it } from 'vitest';
import { mixPoured, petrolBlend, pure } from '../../../core/fluids/index.ts';
import {
  blendDemand,
  type Fuelling,
  fluidFromTrim,
  type MixtureQuestion,
  mixturePlan,
  type TrimQuestion,
} from '../../../core/mixture/index.ts';
import { unwrap } from '../../../core/result/index.ts';

const petrol = unwrap(petrolBlend(0.05));
const mix = unwrap(mixPoured({ methanol: 0.5 }));
const question: MixtureQuestion = {
  petrol,
  mix,
  fuelling: 'closed-loop',
  lambda: 0.8,
  leanest: 0.9,
  points: [0, 0.5e5, 1e5].map((boost, i) => ({
    boost,
    engineSpeed_rad_s: 500,
    airFlow: 0.1 + 0.05 * i,
    fluidFlow: 0.0013 * i,
  })),
};
const plan = (change: Partial<MixtureQuestion> = {}) => unwrap(mixturePlan({ ...question, ...change }));
const codes = (result: { ok: boolean; problems?: readonly { code: string }[] }) =>
  result.ok ? [] : (result.problems ?? []).map((p) => p.code);

describe('mixturePlan', () => {
  it('leaves the table of a closed loop alone and foretells its trim', () => {
    const { rows, notes } = plan();
    expect(rows.map((r) => r.fuelling.tableChange)).toEqual([0, 0, 0]);
    expect(rows[2]?.fuelling.expectedTrim).toBeLessThan(-0.02);
    expect(notes.map((n) => n.code)).toContain('mixture/loop-cuts-by-itself');
  });
  it.each(['open-loop', 'mass-air'] as Fuelling[])(
    '%s: fuel is cut per cell, and a dry tank is named lean',
    (fuelling) => {
      const { rows, notes } = plan({ fuelling });
      expect(rows[0]?.fuelling.tableChange).toBe(0);
      expect(rows[2]?.fuelling.tableChange).toBeCloseTo(-(rows[2]?.demand.alcoholShare ?? 0), 12);
      expect(rows[2]?.fuelling.lambdaIfLeft).toBeLessThan(rows[2]?.target ?? 0);
      expect(notes.map((n) => n.code)).toEqual(
        expect.arrayContaining(['mixture/cut-by-hand', 'mixture/dry-is-lean']),
      );
    },
  );
  it('shifts a rich target towards best power only where fluid flows, never past the limit of the user', () => {
    const { rows } = plan();
    expect(rows[0]?.shift).toBe(0);
    expect(rows[2]?.shift).toBeGreaterThan(0);
    for (const row of plan({ leanest: 0.82 }).rows) expect(row.target).toBeLessThanOrEqual(0.82);
  });
  it('shows the gauge on its own scale and the true ratio of all that burns', () => {
    const row = plan().rows[2];
    expect(row?.gauge).toBeCloseTo((row?.target ?? 0) * 14.7, 12);
    expect(row?.airFuel).toBeLessThan((row?.target ?? 0) * petrol.stoichiometricAirFuel);
  });
  it('a lean mixture is warned of at the step, always', () => {
    expect(plan().notes.map((n) => n.code)).toContain('mixture/lean-breaks-engines');
  });
});

describe('fluidFromTrim', () => {
  const airFlow = 0.21;
  const planned = 0.0026;
  const without = unwrap(blendDemand({ petrol, mix, airFlow, fluidFlow: 0, lambda: 0.82 }));
  const trimOf = (fluidFlow: number, half = 0.001): TrimQuestion => {
    const after = unwrap(blendDemand({ petrol, mix, airFlow, fluidFlow, lambda: 0.82 }));
    return {
      mix,
      petrolAirFuel: petrol.stoichiometricAirFuel,
      petrolFlow: { value: without.petrolFlow, half: 0 },
      change: { value: after.petrolFlow / without.petrolFlow - 1, half },
      lambdaRatio: { value: 1, half: 0 },
      airRatio: { value: 1, half: 0 },
      planned,
    };
  };
  it('gives back the fluid that made the trim', () => {
    const found = unwrap(fluidFromTrim(trimOf(planned)));
    expect(found.fluidFlow).toBeCloseTo(planned, 9);
    expect(found.arrival).toBe('matched');
    expect(found.notes[0]?.code).toBe('mixture/arrived-matched');
  });
  it.each([
    ['clogged', 0.5],
    ['oversize', 1.6],
  ] as const)('sees a %s nozzle', (arrival, factor) => {
    expect(unwrap(fluidFromTrim(trimOf(planned * factor))).arrival).toBe(arrival);
  });
  it('stays undecided where the trim is too noisy', () => {
    expect(unwrap(fluidFromTrim(trimOf(planned * 0.5, 0.03))).arrival).toBe('undecided');
  });
  it('takes a lambda that moved for what it is: richer at the same petrol is alcohol too', () => {
    const uncut = { ...trimOf(planned), change: { value: 0, half: 0.001 } };
    const lambdaAfter =
      airFlow / (without.petrolFlow * petrol.stoichiometricAirFuel + planned * 0.442 * 6.47);
    const found = unwrap(
      fluidFromTrim({ ...uncut, lambdaRatio: { value: lambdaAfter / 0.82, half: 0.002 } }),
    );
    expect(found.fluidFlow / planned).toBeCloseTo(1, 2);
  });
  it('widens with every uncertain number', () => {
    const half = (q: TrimQuestion) => {
      const { interval95 } = unwrap(fluidFromTrim(q));
      return interval95[1] - interval95[0];
    };
    const base = trimOf(planned);
    for (const change of [
      { petrolFlow: { ...base.petrolFlow, half: 0.001 } },
      { change: { ...base.change, half: 0.002 } },
      { lambdaRatio: { value: 1, half: 0.002 } },
      { airRatio: { value: 1, half: 0.002 } },
    ])
      expect(half({ ...base, ...change })).toBeGreaterThan(half(base));
  });
});

describe('bad input', () => {
  const trim: TrimQuestion = {
    mix,
    petrolAirFuel: 14.6,
    petrolFlow: { value: 0.017, half: 0 },
    change: { value: -0.03, half: 0.002 },
    lambdaRatio: { value: 1, half: 0.01 },
    airRatio: { value: 1, half: 0.01 },
    planned: null,
  };
  it.each([
    ['mixture/lambda-outside', mixturePlan({ ...question, lambda: 12.5 })],
    ['mixture/air-not-positive', blendDemand({ petrol, mix, airFlow: 0, fluidFlow: 0, lambda: 0.8 })],
    ['mixture/alcohol-takes-all', blendDemand({ petrol, mix, airFlow: 0.01, fluidFlow: 0.01, lambda: 0.8 })],
    ['mixture/no-alcohol-to-see', fluidFromTrim({ ...trim, mix: pure('water') })],
    ['mixture/trim-outside', fluidFromTrim({ ...trim, change: { value: -3, half: 0 } })],
    ['mixture/lambda-outside', fluidFromTrim({ ...trim, lambdaRatio: { value: 0, half: 0 } })],
  ])('%s', (code, result) => {
    expect(codes(result)).toContain(code);
  });
});
