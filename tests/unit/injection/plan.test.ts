import { describe, expect, it } from 'vitest';
import {
  fluidUsed,
  guardCsv,
  guardSpread,
  PlanJsonSchema,
  planJson,
  planOf,
} from '../../../core/injection/index.ts';
import { type Note, unwrap } from '../../../core/result/index.ts';
import { imperialUnits, metricUnits } from '../../../core/units/index.ts';
import { createShow, languages, noteText, problemText } from '../../../core/words/index.ts';
import { setupWith } from '../../support/setup.ts';

type Change = Parameters<typeof setupWith>[0];
const plan = (change: Change = {}) => unwrap(planOf(setupWith(change)));
const strategy = (change: Change, name: string) => {
  const found = plan(change).strategies.find((s) => s.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
};
const codes = (notes: readonly Note[]) => notes.map((n) => n.code);

/** Problem codes of a setup, each checked to be said in both languages with what to do. */
function refused(change: Change): string[] {
  const result = planOf(setupWith(change));
  if (result.ok) return [];
  for (const problem of result.problems)
    for (const language of languages)
      for (const units of [metricUnits, imperialUnits]) {
        const said = problemText(problem, createShow(language, units));
        expect(said.message.length).toBeGreaterThan(15);
        expect(said.remedy.length).toBeGreaterThan(15);
        expect(`${said.message}${said.remedy}`).not.toMatch(/NaN|undefined|Infinity/);
      }
  return result.problems.map((p) => p.code);
}

describe('a setup that can not be planned is refused in words', () => {
  it.each<[string, Change, string]>([
    ['a share over 100 %', { fluidSystem: { mix: { methanol_percent: 120 } } }, 'fluids/shares-over-whole'],
    [
      'a negative nozzle flow',
      { fluidSystem: { nozzles: [{ name: 'a', flow_mL_min: -5 }] } },
      'delivery/nozzle-flow-not-positive',
    ],
    [
      'a negative pump flow',
      { fluidSystem: { pump: { openFlow_mL_min: -1 } } },
      'delivery/pump-number-negative',
    ],
    [
      'a pump weaker than boost',
      { fluidSystem: { pump: { shutPressure_kPa: 90, setPressure_kPa: 80 } } },
      'delivery/pump-weaker-than-boost',
    ],
    [
      'a start above the full point',
      { targets: { start_kPa: 80, full_kPa: 60 } },
      'injection/start-above-full',
    ],
    ['an empty nozzle list', { fluidSystem: { nozzles: [] } }, 'delivery/no-nozzle'],
    ['no peak boost', { engine: { peakBoost_kPa: null } }, 'injection/no-peak-boost'],
    [
      'nothing to know fuel flow from',
      { engine: { peakPower_kW: null, displacement_L: null } },
      'injection/fuel-flow-unknown',
    ],
    [
      'a pump without numbers',
      { fluidSystem: { pump: { shutPressure_kPa: null, control: 'none' } } },
      'delivery/pump-unknown',
    ],
    [
      'a pump that meters by its speed, known by its bypass alone',
      { fluidSystem: { pump: { shutPressure_kPa: null }, metering: 'pump-speed' } },
      'delivery/pump-unknown',
    ],
    [
      'a regulator without its pressure',
      { fluidSystem: { pump: { setPressure_kPa: null } } },
      'delivery/set-pressure-missing',
    ],
    ['a fitted nozzle that is not listed', { fluidSystem: { fitted: ['900'] } }, 'injection/no-such-nozzle'],
    [
      'a ratio profile that turns back',
      {
        targets: {
          ratioProfile: [
            { boost_kPa: 80, ratio_percent: 5 },
            { boost_kPa: 50, ratio_percent: 10 },
          ],
        },
      },
      'injection/ratio-profile-falls-back',
    ],
    [
      'a bucket point without an amount',
      { fluidSystem: { bucket: { points: [{ setting_percent: 100, time_s: 30 }] } } },
      'delivery/bucket-no-amount',
    ],
  ])('%s', (_, change, code) => {
    expect(refused(change)).toContain(code);
  });

  it('all faults come at once', () => {
    const found = refused({
      fluidSystem: { nozzles: [], mix: { methanol_percent: 70, ethanol_percent: 60 } },
      engine: { peakBoost_kPa: null },
      targets: { start_kPa: 80, full_kPa: 60 },
    });
    expect(found).toEqual(
      expect.arrayContaining([
        'injection/start-above-full',
        'fluids/shares-over-whole',
        'delivery/no-nozzle',
        'injection/no-peak-boost',
      ]),
    );
  });
});

describe('the nozzle', () => {
  it('nearest the need is chosen, a single before a pair of the same', () => {
    const best = plan();
    expect(best.nozzle.names).toEqual(['175']);
    expect(best.nozzle.fit).toBe('matched');
    expect(best.nozzle.isFitted).toBe(false);
  });

  it('between two sizes is the larger, with the smaller named', () => {
    const { nozzle } = plan({
      fluidSystem: {
        nozzles: [
          { name: 'small', flow_mL_min: 120, count: 1 },
          { name: 'large', flow_mL_min: 260, count: 1 },
        ],
      },
    });
    expect(nozzle.names).toEqual(['large']);
    expect(nozzle.fit).toBe('oversize');
    expect(codes(nozzle.notes)).toContain('injection/larger-of-two');
  });

  it('that is too small is said to be, and peak boost to be under-fed', () => {
    const small = plan({ fluidSystem: { nozzles: [{ name: 'a', flow_mL_min: 60, count: 1 }] } });
    expect(small.nozzle.fit).toBe('too-small');
    expect(codes(small.nozzle.notes)).toContain('injection/none-large-enough');
    expect(codes(small.driven.notes)).toContain('injection/under-fed-at-peak');
  });

  it('that is oversize costs the mid-range with a later start, and still over-feeds peak', () => {
    const later = strategy(
      { fluidSystem: { nozzles: [{ name: 'a', flow_mL_min: 270, count: 1 }] } },
      'later-start',
    );
    expect(codes(later.notes)).toContain('injection/mid-range-cost');
    expect(codes(later.notes)).toContain('injection/still-over-feeds');
    expect(later.boostRegions.map((r) => r.kind)).toEqual(expect.arrayContaining(['none', 'under', 'over']));
  });

  it('fitted by name is what the curves are drawn for, whatever ranks first', () => {
    const { nozzle, choices } = plan({ fluidSystem: { fitted: ['100', '250'] } });
    expect(nozzle.isFitted).toBe(true);
    expect(nozzle.names).toEqual(['100', '250']);
    expect(choices[0]?.names).toEqual(['175']);
  });

  it('two at two places each work against the pressure of their own', () => {
    const nozzles = [
      { name: 'inlet', flow_mL_min: 100, place: 'before-compressor' as const },
      { name: 'pipe', flow_mL_min: 100 },
    ];
    const flow = (fitted: string[]) => plan({ fluidSystem: { nozzles, fitted } }).nozzle.flow;
    expect(flow(['inlet'])).toBeGreaterThan(flow(['pipe']));
    // The pump is held at its pressure, so neither takes from the other; the line costs next to nothing.
    expect(flow(['inlet', 'pipe']) / (flow(['inlet']) + flow(['pipe']))).toBeCloseTo(1, 2);
    const review = plan({ fluidSystem: { nozzles, fitted: ['inlet', 'pipe'] } }).fit;
    expect(review.beforeDriving.map((i) => i.id)).toContain('after-the-blades');
  });

  it('before the compressor works against ambient and brings more', () => {
    const before = plan({ fluidSystem: { place: 'before-compressor', fitted: ['175'] } });
    expect(before.nozzle.flow).toBeGreaterThan(plan({ fluidSystem: { fitted: ['175'] } }).nozzle.flow);
  });
});

describe('start and full point', () => {
  it('on or off starts where its mean fluid is that of a matched ramp: 70 % of peak', () => {
    const p = plan({ fluidSystem: { metering: 'on-off', nozzles: [{ name: 'a', flow_mL_min: 161.5 }] } });
    expect(p.strategies.map((s) => s.name)).toEqual(['later-start']);
    expect(p.recommended.reason.code).toBe('injection/recommended-only');
    expect(p.driven.start / 100e3).toBeCloseTo(0.7, 2);
  });

  it('are what the controller can be set to', () => {
    const later = strategy({ fluidSystem: { controller: { step_kPa: 5 } } }, 'full-beyond');
    expect(later.start % 5e3).toBe(0);
    expect(later.full % 5e3).toBe(0);
    expect(codes(later.notes)).toContain('injection/rounded-to-step');
    const capped = strategy(
      { fluidSystem: { fitted: ['250'], controller: { highestFull_kPa: 110 } } },
      'full-beyond',
    );
    expect(capped.full).toBe(110e3);
    expect(codes(capped.notes)).toContain('injection/controller-cannot');
  });

  it('by hand stand beside the others and are kept as typed', () => {
    const p = plan({ targets: { start_kPa: 55, full_kPa: 120, strategy: 'by-hand' } });
    expect(p.strategies.map((s) => s.name)).toEqual(['later-start', 'full-beyond', 'by-hand']);
    expect(p.driven).toMatchObject({ name: 'by-hand', start: 55e3, full: 120e3 });
    expect(p.recommended.name).not.toBe('by-hand');
  });

  it('a start above peak boost never sprays and says so', () => {
    const hand = strategy({ targets: { start_kPa: 130, full_kPa: 160 } }, 'by-hand');
    expect(codes(hand.notes)).toContain('injection/start-above-peak');
    expect(Math.max(...hand.overBoost.delivered)).toBe(0);
  });

  it('a slowed pump keeps its later start where a stretched ramp would leave coarse drops', () => {
    const p = plan({
      fluidSystem: { metering: 'pump-speed', fitted: ['100', '175'], pump: { control: 'none' } },
    });
    expect(p.recommended).toMatchObject({ name: 'later-start' });
    expect(p.recommended.reason.code).toBe('injection/recommended-for-drops');
    const valve = plan({ fluidSystem: { metering: 'valve-duty', fitted: ['100', '175'] } });
    expect(valve.recommended.name).toBe('full-beyond');
  });
});

describe('a pump held by a bypass', () => {
  it('does not follow its speed, and the full point that meets the need is named', () => {
    const beyond = strategy(
      { fluidSystem: { metering: 'pump-speed', fitted: ['100', '175'] } },
      'full-beyond',
    );
    expect(beyond.peakFeed).toBeGreaterThan(1.15);
    const note = beyond.notes.find((n) => n.code === 'injection/full-meets-need');
    if (note?.code !== 'injection/full-meets-need') throw new Error('expected the full point');
    const met = strategy(
      {
        fluidSystem: { metering: 'pump-speed', fitted: ['100', '175'] },
        targets: { start_kPa: beyond.start / 1e3, full_kPa: note.facts.full / 1e3 },
      },
      'by-hand',
    );
    expect(met.peakFeed).toBeCloseTo(1, 3);
  });
});

describe('a known knock limit', () => {
  const limited = (change: Change = {}) =>
    strategy({ ...change, engine: { ...change.engine, knockLimitedBoost_kPa: 45 } }, 'later-start');

  it('moves the start below it', () => {
    const p = limited({ fluidSystem: { fitted: ['250'] } });
    expect(p.start).toBeLessThan(45e3);
    expect(codes(p.notes)).toContain('injection/start-moved-for-knock');
    expect(p.arrival?.boost).toBeLessThanOrEqual(45e3);
  });

  it('counts the time that an empty line takes: the emptier, the earlier the start', () => {
    const at = (empty_m: number) => limited({ fluidSystem: { fitted: ['250'], line: { empty_m } } });
    const [full, short] = [at(0), at(0.05)];
    expect(short.start).toBeLessThan(full.start);
    expect(short.arrival?.boost).toBeLessThanOrEqual(45e3);
  });

  it('that no start can meet is said', () => {
    const p = limited({ fluidSystem: { line: { empty_m: 3, length_m: 3 } } });
    expect(codes(p.notes)).toContain('injection/fluid-too-late');
  });

  it('names the fallback a step below it, and nothing at all where nothing is known', () => {
    expect(plan({ engine: { knockLimitedBoost_kPa: 60 } }).fallback.boost).toBe(50e3);
    expect(plan({ engine: { knockLimitedBoost_kPa: 60, soundBoost_kPa: 40 } }).fallback.boost).toBe(40e3);
    expect(plan({ engine: { knockLimitedBoost_kPa: 45, soundBoost_kPa: 40 } }).fallback.boost).toBe(35e3);
    const unknown = plan().fallback;
    expect(unknown.boost).toBeNull();
    expect(codes(unknown.notes)).toContain('injection/fallback-unknown');
  });
});

describe('the danger of liquid in a cylinder', () => {
  it('is said with this engine’s own volume and time', () => {
    const note = plan().notes.find((n) => n.code === 'fit/lock-volume');
    if (note?.code !== 'fit/lock-volume') throw new Error('expected the volume');
    expect(note.facts.volume * 1e6).toBeCloseTo(500 / 8.5, 3);
    expect(note.facts.seconds).toBeCloseTo(note.facts.volume / plan().peak.flow, 9);
    expect(codes(plan({ engine: { cylinders: null } }).notes)).not.toContain('fit/lock-volume');
  });
});

describe('what is left open', () => {
  it('a mix that is not given is taken as half and half, and that is said', () => {
    const open = plan({ fluidSystem: { mix: null } });
    expect(open.need.fluid).toBeCloseTo(
      plan({ fluidSystem: { mix: { methanol_percent: 50 } } }).need.fluid,
      12,
    );
    expect(open.notes).toContainEqual(
      expect.objectContaining({ facts: expect.objectContaining({ what: 'mix' }) }),
    );
  });

  it('a pump known by its regulator alone is taken to hold its pressure, and that is said', () => {
    const held = plan({ fluidSystem: { pump: { shutPressure_kPa: null, openFlow_mL_min: null } } });
    expect(codes(held.notes)).toContain('delivery/pump-curve-unknown');
    expect(held.nozzle.flow / plan().nozzle.flow).toBeCloseTo(1, 3);
  });
});

describe('what the controller meters by', () => {
  it('by boost alone low engine speed is over-fed, by injector duty it is not', () => {
    const byBoost = plan();
    expect(codes(byBoost.notes)).toContain('injection/boost-alone-over-feeds');
    const byDuty = plan({ fluidSystem: { input: 'injector-duty' } });
    expect(codes(byDuty.notes)).not.toContain('injection/boost-alone-over-feeds');
    const most = (p: ReturnType<typeof plan>) => Math.max(...p.driven.overPull.feed.map((f) => f ?? 0));
    expect(most(byDuty)).toBeLessThan(most(byBoost));
    expect(byDuty.driven.peakFeed).toBeCloseTo(1, 2);
  });

  it('the map has a row for each engine speed and knows where too much comes', () => {
    const { map } = plan();
    expect(map.kind).toHaveLength(map.engineSpeed_rad_s.length);
    expect(map.kind[0]).toHaveLength(map.boost.length);
    expect(map.kind[0]?.at(-1)).toBe('over');
  });
});

describe('the bucket test', () => {
  it('overrides the ratings in every number that follows', () => {
    const base = plan({ fluidSystem: { fitted: ['175'] } });
    const rated = unwrap(base.system.point(base.nozzle.group, 0, 1)).flow;
    const points = [100, 60].map((setting_percent) => ({
      setting_percent,
      time_s: 60,
      volume_mL: rated * 60e6 * 0.85 * (setting_percent / 100),
    }));
    const tested = plan({ fluidSystem: { fitted: ['175'], bucket: { points } } });
    expect(tested.nozzle.flow / base.nozzle.flow).toBeCloseTo(0.85, 3);
    expect(codes(tested.notes)).toContain('delivery/bucket-overrides');
  });

  it('takes the place of the nozzle in the guard band', () => {
    expect(guardSpread(setupWith(), 0.01).flow).toBeLessThan(guardSpread(setupWith(), null).flow);
    expect(guardSpread(setupWith(), 0.08).flow).toBeGreaterThan(guardSpread(setupWith(), null).flow);
  });
});

describe('endurance', () => {
  it('counts fluid under the flow over time, gaps as nothing', () => {
    expect(fluidUsed([0, 1, 2, 3], [0, 2, 2, 0])).toBeCloseTo(4, 12);
    expect(fluidUsed([0, 1, 2], [1, Number.NaN, 1])).toBe(0);
    expect(fluidUsed([0, 1, 2, 3], [0, 2, 2, 0], 1, 3)).toBeCloseTo(2, 12);
  });

  it('takes logged flow before planned', () => {
    const { endurance } = plan({ fluidSystem: { logged: { fluid_mL: 100, pulls: 4 } } });
    expect(endurance.perPull * 1e6).toBeCloseTo(25, 9);
    expect(endurance.isLogged).toBe(true);
    expect(endurance.pullsPerTank).toBeCloseTo(3500 / 25, 6);
  });

  it('refills that agree are said to, and a leak shows', () => {
    const filled = (factor: number) => {
      const perPull = plan().endurance.perPull;
      return plan({
        fluidSystem: { refills: [{ filled_L: perPull * 1e3 * 20 * factor, pulls: 20 }] },
      }).endurance;
    };
    expect(codes(filled(1.1).notes)).toContain('injection/refill-agrees');
    expect(codes(filled(1.3).notes)).toContain('injection/refill-differs');
    expect(filled(1.3).usedOverPlanned).toBeCloseTo(1.3, 6);
  });

  it('a small reserve and a small tank are said', () => {
    const { endurance } = plan({ fluidSystem: { tank_L: 0.15, reserve_L: 0.02 } });
    expect(codes(endurance.notes)).toEqual(
      expect.arrayContaining(['injection/tank-empties', 'injection/reserve-too-small']),
    );
  });
});

describe('the guard band', () => {
  it('holds the flow between its limits at every level, up to peak boost', () => {
    const { guardBand } = plan();
    expect(guardBand.length).toBeGreaterThan(5);
    for (const row of guardBand) {
      expect(row.lowestFlow).toBeLessThan(row.flow);
      expect(row.highestFlow).toBeGreaterThan(row.flow);
      expect(row.lowestPressure).toBeLessThan(row.pressure);
    }
    expect(guardBand.at(-1)?.boost).toBeCloseTo(100e3, 3);
  });

  it('as CSV has units in its header, and no cell that a spreadsheet runs', () => {
    const text = guardCsv(plan().guardBand, '=HYPERLINK("http://example.invalid")');
    const [title, header, first] = text.split('\r\n');
    expect(title).toBe('"\'=HYPERLINK(""http://example.invalid"")"');
    expect(header).toBe(
      'boost_kPa,flow_mL_min,lowest_flow_mL_min,highest_flow_mL_min,pressure_kPa,lowest_pressure_kPa,highest_pressure_kPa',
    );
    expect(first?.split(',').every((cell) => Number.isFinite(Number(cell)))).toBe(true);
    for (const start of ['+1', '-1', '@x', '\tx', '=x'])
      expect(guardCsv([], start).startsWith("'")).toBe(true);
  });
});

describe('after a loss', () => {
  it('the order is later start, smaller nozzle, use the room, with this car’s numbers', () => {
    const { powerLossGuide } = plan({
      fluidSystem: { fitted: ['100', '175'] },
      targets: { strategy: 'full-beyond' },
    });
    const order = codes(powerLossGuide).filter((c) => c.startsWith('injection/guide'));
    expect(order).toEqual([
      'injection/guide-later-start',
      'injection/guide-smaller-nozzle',
      'injection/guide-use-the-room',
    ]);
    expect(codes(powerLossGuide)[0]).toBe('injection/spray-alone');
    const smaller = powerLossGuide.find((n) => n.code === 'injection/guide-smaller-nozzle');
    expect(smaller?.facts).toMatchObject({ choice: '250' });
  });
});

describe('the plan as JSON', () => {
  it('keeps to its schema, and survives being written and read', () => {
    const json = planJson(
      plan({ fluidSystem: { fitted: ['250'] }, targets: { start_kPa: 50, full_kPa: 110 } }),
    );
    expect(PlanJsonSchema.parse(JSON.parse(JSON.stringify(json)))).toEqual(json);
    expect(Object.keys(json)).toEqual(
      expect.arrayContaining([
        'need',
        'nozzle',
        'strategies',
        'recommended',
        'endurance',
        'guardBand',
        'fit',
      ]),
    );
    expect(Object.keys(json.need)).toEqual(
      expect.arrayContaining(['fluid_mL_min', 'fluid_g_s', 'fuel_g_s', 'ratio']),
    );
    expect(json.strategies).toHaveLength(3);
    expect(json.need.fluid_g_s / json.need.fuel_g_s).toBeCloseTo(json.need.ratio, 5);
  });
});

describe('every remark of a plan', () => {
  it('can be said in both languages, without a hole in it', () => {
    const changes: Change[] = [
      {},
      {
        engine: { knockLimitedBoost_kPa: 50, soundBoost_kPa: 30 },
        fluidSystem: { fitted: ['375'], line: { empty_m: 2 } },
      },
      { engine: { boostCurve: [], pullDuration_s: null, peakPower_rpm: null, fuelConsumption_kg_kWh: null } },
      { targets: { fuelFrom: 'air', fluidRatio_percent: 35 } },
      { targets: { fluidRatio_percent: 6 }, fluidSystem: { metering: 'pump-speed', place: null } },
      { fluidSystem: { line: { length_m: 8, bore_mm: 1.5 }, pump: { setPressure_kPa: 1350 } } },
    ];
    const said = new Set<string>();
    for (const change of changes) {
      const p = plan(change);
      const notes = [
        ...p.notes,
        p.recommended.reason,
        ...p.strategies.flatMap((s) => s.notes),
        ...p.choices.flatMap((c) => c.notes),
        ...p.endurance.notes,
        ...p.fallback.notes,
        ...p.powerLossGuide,
      ];
      for (const note of notes) {
        said.add(note.code);
        for (const language of languages) {
          const text = noteText(note, createShow(language, metricUnits));
          expect(text, note.code).not.toMatch(/NaN|undefined|Infinity|\[object/);
          expect(text.length).toBeGreaterThan(10);
        }
      }
    }
    expect(said.size).toBeGreaterThan(25);
  });
});
