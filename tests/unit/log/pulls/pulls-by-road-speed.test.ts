import { describe, expect, it } from 'vitest';
import { findPulls, type Log, type PullOptions, readLog } from '../../../../core/log/index.ts';
import { CarSchema, powerOfPull, unknownConditions } from '../../../../core/power/index.ts';
import { unwrap } from '../../../../core/result/index.ts';
import { logDrive, plainText, randomTraits } from '../../../support/log-generator/logger.ts';
import { createRandom } from '../../../support/log-generator/random.ts';
import { roadScenario } from '../../../support/log-generator/scenario.ts';
import { scorePulls } from '../../../support/log-generator/score.ts';

const car = CarSchema.parse({
  mass_kg: 1400,
  gearRatios: [3.4, 2.1, 1.5, 1.12, 0.9],
  finalDrive: 3.9,
  rollingRadius_m: 0.31,
  pullGear: 3,
  roadLoad: { a_N: 165, b_N_s_m: 0, c_N_s2_m2: 0.4 },
  wheelInertia_kg_m2: 0,
  tyreSlip: 0,
});
const ratioOf = (gear: number) => ((car.gearRatios[gear - 1] ?? Number.NaN) * (car.finalDrive ?? 1)) / 0.31;
/** An engine of 250 N m up to 4,000 rpm, then falling to 190 at 6,500. */
const torqueAt = (w: number) => 250 - 60 * Math.max(0, (w * 9.549 - 4000) / 2500);

const accelerationAt = (v: number, ratio: number) => (torqueAt(v * ratio) * ratio - 165 - 0.4 * v * v) / 1400;

type Leg = {
  readonly gear: number;
  readonly rpmFrom?: number;
  readonly rpmTo: number;
  readonly cut_s?: number;
};

/** Full throttle in one gear after the other; between two of them torque is cut for `cut_s`, the pedal stays down. */
function driven(legs: readonly Leg[], rows = { pedal: true, rpm: false, gear: false }, rate = 20): Log {
  const step = 0.001;
  const lines: string[] = [];
  let [t, v, next] = [0, 0, 0];
  const write = (pedal: number, gear: number) => {
    if (t >= next) {
      const cells = [t.toFixed(3), (v * 3.6).toFixed(1)];
      if (rows.pedal) cells.push(`${pedal}`);
      if (rows.gear) cells.push(`${gear}`);
      lines.push(cells.join(','));
      next += 1 / rate;
    }
    t += step;
  };
  const hold = (seconds: number, gear: number) => {
    for (const end = t + seconds; t < end; ) write(10, gear);
  };
  for (const { gear, rpmFrom, rpmTo, cut_s } of legs) {
    const ratio = ratioOf(gear);
    if (rpmFrom !== undefined) {
      v = rpmFrom / 9.549 / ratio;
      hold(3, gear);
    }
    for (const end = t + (cut_s ?? 0); t < end; v -= 0.5 * step) write(100, gear);
    for (; v * ratio * 9.549 < rpmTo; v += accelerationAt(v, ratio) * step) write(100, gear);
  }
  hold(3, legs.at(-1)?.gear ?? 1);
  const head = ['Time (s)', 'Vehicle speed (km/h)'];
  if (rows.pedal) head.push('Pedal (%)');
  if (rows.gear) head.push('Gear');
  const text = [head.join(','), ...lines].join('\n');
  return unwrap(readLog(new TextEncoder().encode(text), { file: 'no-rpm.csv' }));
}

const options: PullOptions = {
  gearRatios: car.gearRatios,
  finalDrive: car.finalDrive,
  rollingRadius_m: car.rollingRadius_m,
  pullGear: 3,
};
const third: Leg = { gear: 3, rpmFrom: 2200, rpmTo: 6200 };
const codesOf = (notes: readonly { readonly code: string }[]) => notes.map((n) => n.code);

describe('a log without engine speed', () => {
  it('gives pulls with engine speed computed through the told gear, and says so', () => {
    const { pulls, warnings } = findPulls(driven([third]), options);
    expect(pulls).toMatchObject([{ gear: 3, complete: true, flags: [] }]);
    // 2 % of slip is usual at full load and is counted in.
    expect(pulls[0]?.rpmFrom).toBeCloseTo(2200 * 1.02, -2);
    expect(pulls[0]?.rpmTo).toBeCloseTo(6200 * 1.02, -2);
    expect(warnings).toMatchObject([{ code: 'log/engine-speed-computed', facts: { gearFrom: 'told' } }]);
  });

  it('tells the other gears from the force beside that of the told one', () => {
    const log = driven([
      third,
      { gear: 2, rpmFrom: 2400, rpmTo: 6200 },
      { gear: 4, rpmFrom: 2400, rpmTo: 6000 },
      { gear: 3, rpmFrom: 2600, rpmTo: 6300 },
    ]);
    expect(findPulls(log, options).pulls.map((p) => p.gear)).toEqual([3, 2, 4, 3]);
    expect(findPulls(log, { ...options, pullGear: 4 }).pulls.map((p) => p.gear)).not.toEqual([3, 2, 4, 3]);
  });

  it('parts a pull where acceleration dips and goes on in the next gear', () => {
    const log = driven([third, { gear: 4, rpmTo: 6000, cut_s: 0.25 }]);
    const { pulls } = findPulls(log, options);
    expect(pulls.map((p) => p.gear)).toEqual([3, 4]);
    expect(pulls.map((p) => codesOf(p.flags))).toEqual([['log/pull-gear-change'], ['log/pull-gear-change']]);
    expect((pulls[1]?.start_s ?? 0) - (pulls[0]?.end_s ?? 0)).toBeLessThan(0.5);
  });

  it('keeps a pull whole whose torque was cut for a moment in the same gear', () => {
    const log = driven([
      third,
      { gear: 3, rpmFrom: 2200, rpmTo: 4300 },
      { gear: 3, rpmTo: 6200, cut_s: 0.4 },
    ]);
    const { pulls } = findPulls(log, options);
    expect(pulls.map((p) => [p.gear, p.complete])).toEqual([
      [3, true],
      [3, true],
    ]);
    expect(pulls[1]?.rpmTo).toBeCloseTo(6200 * 1.02, -2);
  });

  it('keeps it whole where nothing but the force on both sides of the cut tells the gear', () => {
    const log = driven([
      { gear: 3, rpmFrom: 2200, rpmTo: 5000 },
      { gear: 3, rpmTo: 6400, cut_s: 0.4 },
    ]);
    expect(findPulls(log, options).pulls).toMatchObject([{ gear: 3, complete: true }]);
  });

  it('takes a logged gear for what it says', () => {
    const log = driven([{ gear: 2, rpmFrom: 2400, rpmTo: 6200 }], { pedal: true, rpm: false, gear: true });
    const { pulls, warnings } = findPulls(log, options);
    expect(pulls[0]?.gear).toBe(2);
    expect(pulls[0]?.rpmTo).toBeCloseTo(6200 * 1.02, -2);
    expect(warnings).toMatchObject([{ code: 'log/engine-speed-computed', facts: { gearFrom: 'log' } }]);
  });

  it.each([
    [{ gearRatios: [] }, 'gearRatios'],
    [{ finalDrive: null }, 'finalDrive'],
    [{ rollingRadius_m: null }, 'radius'],
    [{ pullGear: null }, 'gear'],
  ])('without %o finds the pulls, leaves engine speed open and names what is missing', (gap, missing) => {
    const { pulls, warnings } = findPulls(driven([third]), { ...options, ...gap });
    expect(pulls).toMatchObject([{ complete: true, rpmFrom: Number.NaN, rpmTo: Number.NaN }]);
    expect(warnings).toMatchObject([{ code: 'log/engine-speed-open', facts: { missing } }]);
  });

  it('leaves the gears open where two would serve as the told one', () => {
    const log = driven([third, { gear: 2, rpmFrom: 2400, rpmTo: 6200 }]);
    const { pulls } = findPulls(log, options);
    expect(pulls.map((p) => [p.gear, codesOf(p.flags)])).toEqual([
      [null, ['log/pull-gear-unsettled']],
      [null, ['log/pull-gear-unsettled']],
    ]);
    // Nor does power take the told gear behind its back.
    const power = powerOfPull(log, pulls[0] as (typeof pulls)[0], car, unknownConditions);
    expect(power).toMatchObject({
      ok: false,
      problems: [{ code: 'power/no-engine-speed', facts: { missing: 'gear' } }],
    });
  });

  it('has no pulls where speed alone would have to tell full throttle, and says what to log', () => {
    const { pulls, warnings } = findPulls(
      driven([third], { pedal: false, rpm: false, gear: false }),
      options,
    );
    expect(pulls).toEqual([]);
    expect(codesOf(warnings)).toEqual(['log/speed-alone']);
  });

  it('has no pulls without a road speed either', () => {
    const text = `Time (s),Pedal (%)\n${Array.from({ length: 200 }, (_, i) => `${i / 20},${i > 60 ? 100 : 10}`).join('\n')}`;
    const log = unwrap(readLog(new TextEncoder().encode(text), { file: 'pedal.csv' }));
    expect(codesOf(findPulls(log, options).warnings)).toEqual(['log/no-engine-speed']);
  });

  it('gives the power that drove the car, at the engine speed it had', () => {
    const log = driven([third, third]);
    for (const pull of findPulls(log, options).pulls) {
      const power = unwrap(powerOfPull(log, pull, car, unknownConditions));
      let squares = 0;
      power.engineSpeed_rad_s.forEach((w, i) => {
        squares += ((power.wheelPower[i] ?? 0) / (torqueAt(w) * w) - 1) ** 2;
      });
      expect(Math.sqrt(squares / power.engineSpeed_rad_s.length)).toBeLessThan(0.015);
      expect(power.basis).toBe('vehicle-speed');
    }
  });
});

describe('invented drives without engine speed', () => {
  it('give their pulls by pedal or throttle within 0.2 s, and no gear that is wrong', () => {
    let [hits, all, extra, right, wrong] = [0, 0, 0, 0, 0];
    for (let seed = 1; seed <= 60; seed++) {
      const random = createRandom(seed);
      const { car: driver, drive } = roadScenario(random, 0.75);
      const traits = randomTraits(random);
      const has = { ...traits.has, speed: true, gear: false };
      const table = logDrive(drive, { ...traits, has }, random);
      const columns = table.columns.filter((c) => c.name !== 'Engine Speed');
      const text = plainText({ ...table, columns });
      const log = unwrap(readLog(new TextEncoder().encode(text), { file: 'drive.csv' }));
      const gear = table.pulls[0]?.gear ?? 3;
      const found = findPulls(log, {
        gearRatios: driver.gearRatios,
        finalDrive: driver.finalDrive,
        rollingRadius_m: driver.rollingRadius,
        pullGear: gear,
      }).pulls.map((p) => ({ start: p.start_s, end: p.end_s, gear: p.gear }));
      const score = scorePulls(found, table.pulls, 0.2);
      hits += score.hits;
      extra += score.extra;
      all += table.pulls.length;
      for (const p of found) {
        const truth = table.pulls.find((t) => t.start < p.end && t.end > p.start);
        if (!truth || p.gear === null) continue;
        if (truth.gear === p.gear) right++;
        else wrong++;
      }
    }
    expect(all).toBeGreaterThan(100);
    expect(hits / all).toBeGreaterThanOrEqual(0.9);
    expect(wrong).toBe(0);
    expect(right / all).toBeGreaterThan(0.85);
    expect(extra / all).toBeLessThan(0.1);
  }, 60_000);
});
