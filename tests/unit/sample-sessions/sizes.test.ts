import { describe, expect, it } from 'vitest';
import { luckOf, usual } from '../../../sample-sessions/simulation/day.ts';
import { drive, type Phase } from '../../../sample-sessions/simulation/drive.ts';
import { engine } from '../../../sample-sessions/simulation/hatch.ts';
import type { TraceField } from '../../../sample-sessions/simulation/trace.ts';
import { bandMean, curveOf } from '../../../sample-sessions/simulation/truth.ts';
import { baseTune, type Tune } from '../../../sample-sessions/simulation/tune.ts';
import { bandMeanOf, truth } from '../../support/sample-truth.ts';

// Windows without another source are common practice: the sizes a tuner would call plausible.
const sprayed: Tune = { ...baseTune, isSprayOn: true };
const phases = (luck = usual): Phase[] => [
  { kind: 'cruise', seconds: 2, luck },
  { kind: 'pull', luck },
];

/** Value of a field of the nominal pull where the engine first passes this speed. */
function at(tune: Tune, rpm: number, field: TraceField): number {
  const { fields, pulls } = drive(tune, phases(), 0, null);
  const from = pulls[0]?.from ?? 0;
  const index = fields.engineSpeed_rpm.findIndex((n, i) => i >= from && n >= rpm);
  return fields[field][index] ?? Number.NaN;
}

function within(value: number, low: number, high: number) {
  expect(value).toBeGreaterThanOrEqual(low);
  expect(value).toBeLessThanOrEqual(high);
}

describe('the invented car has the sizes of a real one', () => {
  const whole = truth.entries.flatMap((e) =>
    e.files.flatMap((f) => f.pulls.map((p) => ({ ...p, id: e.id }))),
  );

  it('a pull lasts 6 to 12 s and three or four pulls make an entry', () => {
    expect(whole).toHaveLength(20);
    for (const pull of whole) within(pull.end_s - pull.start_s, 6, 12);
    for (const e of truth.entries) within(e.files.flatMap((f) => f.pulls).length, 3, 4);
  });

  it('a pull with spray uses 15 to 35 mL, 10 to 25 % of the fuel by mass', () => {
    for (const pull of whole.filter((p) => p.id !== 'baseline')) {
      within(pull.fluid_mL, 15, 35);
      within(pull.fluidOverFuel, 0.1, 0.25);
    }
  });

  it('peak wheel power lies between 140 and 190 kW and is 82 to 92 % of engine power', () => {
    for (const e of truth.entries) {
      within(Math.max(...e.wheelPower_kW.map((p) => p ?? 0)), 140, 190);
      const i = truth.grid_rpm.indexOf(6000);
      within((e.wheelPower_kW[i] ?? 0) / (e.enginePower_kW[i] ?? 1), 0.82, 0.92);
    }
  });

  it('burns 0.30 to 0.36 kg/kWh at full load and breathes about 13 kg/min of air for 250 hp', () => {
    const power = at(baseTune, 6000, 'enginePower');
    within((at(baseTune, 6000, 'fuelFlow') / power) * 3.6e6, 0.3, 0.36);
    within(((at(baseTune, 6000, 'airFlow') * 60) / power) * 186_425, 10.5, 13.5);
    within(at(baseTune, 6000, 'injectorDuty'), 0.5, 0.85);
  });

  it('trims 2.5 to 5 % of fuel for the alcohol, as its air demand asks', () => {
    within(at(sprayed, 6000, 'fuelTrim'), -0.05, -0.025);
    expect(at(baseTune, 6000, 'fuelTrim')).toBeCloseTo(0, 6);
  });

  it('runs ahead of the road by 1 to 3 % under full load', () => {
    for (const rpm of [3500, 6000]) {
      const rolled = ((at(sprayed, rpm, 'engineSpeed_rpm') * Math.PI) / 30 / (1.32 * 4.06)) * 0.312;
      within(rolled / at(sprayed, rpm, 'speed') - 1, 0.01, 0.03);
    }
  });

  it('has a flat-topped spark hill: about 1 % lost 4 to 5 degrees before the top, 3 to 4 % at 8', () => {
    const loss = (degrees: number) => engine.sparkCurvature * degrees ** 2;
    within(loss(4.5), 0.008, 0.012);
    within(loss(8), 0.03, 0.04);
  });

  it('knocks when dry with 4 degrees more, and the retard takes them back', () => {
    const { fields } = drive({ ...baseTune, loadedSpark_deg: 4 }, phases(), 0, null);
    expect(Math.max(...fields.knockRetard_deg)).toBeGreaterThan(1);
    const quiet = drive({ ...sprayed, loadedSpark_deg: 1 }, phases(), 0, null);
    expect(Math.max(...quiet.fields.knockRetard_deg)).toBe(0);
  });

  it('repeats a pull within 0.2 to 0.6 %', () => {
    const means = Array.from({ length: 24 }, (_, i) => {
      const trace = drive(sprayed, phases(luckOf(7, `repeat/${i}`)), 7, `repeat/${i}`);
      return bandMean(curveOf(trace, 0, 'wheelPower'));
    });
    const mean = means.reduce((a, b) => a + b, 0) / means.length;
    const deviation = Math.sqrt(means.reduce((a, b) => a + (b - mean) ** 2, 0) / (means.length - 1));
    within(deviation / mean, 0.002, 0.006);
  });
});

describe('the story that the truth tells', () => {
  it('is told on an unremarkable day: no entry is off its worth by more than 0.35 %', () => {
    for (const e of truth.entries) {
      const worth = bandMeanOf(e.nominalWheelPower_kW, ...truth.band_rpm);
      within(e.bandMean_kW / worth - 1, -0.0035, 0.0035);
    }
  });

  const byId = new Map(truth.entries.map((e) => [e.id, e]));
  const effect = (id: string) => byId.get(id)?.declared?.effect_percent ?? Number.NaN;

  it('spray alone costs a little, boost and spark gain, a richer target does nothing', () => {
    within(effect('spray'), -1, 0);
    within(effect('boost'), 3, 7);
    within(effect('spark'), 0.5, 1.5);
    within(effect('mixture'), -0.3, 0.3);
  });

  it('only the last entry moved more than it declared', () => {
    expect(truth.entries.filter((e) => e.isConfounded).map((e) => e.id)).toEqual(['spark-again']);
    const last = byId.get('spark-again');
    expect((last?.total?.effect_kW ?? 0) - (last?.declared?.effect_kW ?? 0)).toBeGreaterThan(2);
  });
});
