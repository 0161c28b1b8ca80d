import { describe, expect, it } from 'vitest';
import {
  explainGate,
  type Ladder,
  type LadderInput,
  LadderJsonSchema,
  ladderJson,
  ladderLimits,
  MixtureJsonSchema,
  mixtureJson,
  mixtureOfSetup,
  planLadder,
  type SparkTable,
} from '../../../core/ladder/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { readTable } from '../../../core/tables/index.ts';
import { celsius, metricUnits } from '../../../core/units/index.ts';
import { createShow, noteText } from '../../../core/words/index.ts';
import {
  driven,
  entry,
  sampleLadder,
  sampleLimits,
  sampleSetup,
  sprayed,
  verdict,
} from '../../support/ladder.ts';

const ladderOf = (change: Partial<LadderInput> = {}): Ladder => unwrap(planLadder(sampleLadder(change)));
const kinds = (ladder: Ladder) => ladder.steps.map((s) => s.kind);
const topBoost = (ladder: Ladder) =>
  Math.max(ladder.standing.boost, ...ladder.steps.filter((s) => s.kind === 'boost').map((s) => s.to ?? 0));
const topSpark = (ladder: Ladder) =>
  Math.max(0, ...ladder.steps.filter((s) => s.kind === 'spark').map((s) => s.to ?? 0));

describe('a spark table', () => {
  const text =
    '\t2000\t3000\t4000\t5000\n60\t20\t22\t24\t26\n150\t12\t14\t16\t18\n200\t9\t11\t13\t15\n220\t8\t10\t12\t14';
  const sparkTable: SparkTable = {
    name: 'Spark',
    table: unwrap(readTable(text)),
    axes: { engineSpeed: 'across', load: { kind: 'absolute', unit: 'kPa' } },
  };
  const steps = (ladder: Ladder) => LadderJsonSchema.parse(ladderJson(ladder)).steps;
  it('has its covered cells named by every spark step, and by no other', () => {
    for (const { kind, cells } of steps(ladderOf({ sparkTable }))) {
      if (kind !== 'spark') expect(cells?.covered).toBeUndefined();
      else {
        expect(cells).toMatchObject({ table: 'Spark', loadUnit: 'kPa' });
        expect(cells?.covered?.length).toBeGreaterThan(0);
        // At part load no fluid flows: those cells keep their spark.
        expect(cells?.covered?.every((c) => c.load > 100)).toBe(true);
      }
    }
  });
  it('that is not there leaves the range alone', () => {
    const spark = steps(ladderOf()).find((s) => s.kind === 'spark');
    expect(spark?.cells).toBeDefined();
    expect(spark?.cells?.covered).toBeUndefined();
  });
});

describe('the sample car', () => {
  it('gets baseline, spray, boost, spark, mixture, in that order', () => {
    const seen = [...new Set(kinds(ladderOf()).filter((k) => k !== 'nothing'))];
    expect(seen).toEqual(['baseline', 'spray', 'boost', 'spark', 'mixture']);
  });
  it('climbs from 1.0 to 1.1 bar in one step, as its story goes, and stops there: the target', () => {
    const ladder = ladderOf();
    const [boost] = ladder.steps.filter((s) => s.kind === 'boost');
    expect([boost?.from, boost?.to]).toEqual([100e3, 110e3]);
    expect(ladder.caps[0]).toEqual({ end: 'target', boost: 110e3 });
  });
  it('predicts a range of power that holds the true gain of boost (truth of the sample: 5.1 %)', () => {
    const steps = ladderOf({ ledger: [driven.baseline, driven.spray] }).steps;
    const boost = steps.find((s) => s.kind === 'boost')?.predicted.power;
    const [low, high] = [(boost?.[0] ?? 0) / 198e3 - 1, (boost?.[1] ?? 0) / 198e3 - 1];
    expect(low).toBeLessThan(0.051);
    expect(high).toBeGreaterThan(0.051);
  });
  it('changes one thing at a time, each step from where the one before ended', () => {
    const { steps, standing } = ladderOf();
    const last = { boost: standing.boost, spark: standing.spark_rad, mixture: standing.lambda };
    for (const step of steps) {
      if (step.kind !== 'boost' && step.kind !== 'spark' && step.kind !== 'mixture') continue;
      expect(step.from).toBeCloseTo(last[step.kind], 9);
      expect(step.to).not.toBe(step.from);
      last[step.kind] = step.to ?? Number.NaN;
    }
    expect(steps.map((s) => s.n)).toEqual(steps.map((_, i) => i + 1));
  });
  it('drives an earlier entry again after four changes on the street, five on the dyno', () => {
    expect(kinds(ladderOf()).indexOf('nothing')).toBe(5);
    const dyno = ladderOf({ place: 'dyno' });
    expect(kinds(dyno).indexOf('nothing')).toBe(6);
    expect([dyno.routine.pulls, dyno.routine.bothWays]).toEqual([3, false]);
    expect(ladderOf().routine.coolDown).toBeGreaterThan(dyno.routine.coolDown);
  });
  it('says caution where a step is decided, and never the word safe', () => {
    for (const language of ['en', 'de'] as const) {
      const show = createShow(language, metricUnits);
      for (const step of ladderOf().steps) {
        if (step.kind !== 'nothing') expect(step.cautions.length).toBeGreaterThan(0);
        for (const note of [...step.reasons, ...step.cautions])
          expect(noteText(note, show)).not.toMatch(/\b[Ss]afe\b|sicher ist|ungefährlich|NaN|undefined/);
      }
    }
  });
  it('names where its numbers come from', () => {
    const ids = ladderOf().explanations.map((e) => e.id);
    expect(ids).toEqual(
      expect.arrayContaining([
        'charge/knock-headroom',
        'ladder/predicted-power',
        'mixture/blend',
        'injection/fuel',
      ]),
    );
  });
  it('plans mixture in hundredths of lambda, never past the target that was found', () => {
    const { steps, plan } = ladderOf();
    const rows = unwrap(mixtureOfSetup(sampleSetup(), plan, 0.9)).plan.rows;
    const [first, ...rest] = steps.filter((s) => s.kind === 'mixture');
    const last = rest.at(-1) ?? first;
    expect((last?.to ?? 0) * 100).toBeCloseTo(Math.round((last?.to ?? 0) * 100), 9);
    expect(last?.to).toBeLessThanOrEqual(rows.at(-1)?.target ?? 0);
    expect(last?.to).toBeGreaterThan(first?.from ?? 1);
  });
  it('names where each number of a step comes from', () => {
    for (const step of ladderOf().steps) {
      const ids = step.explanations.map((e) => e.id);
      expect(ids).toEqual(
        expect.arrayContaining([
          'ladder/predicted-power',
          'ladder/injector-duty',
          'ladder/fuel-pump',
          'ladder/manifold-pressure',
          'charge/cooler',
        ]),
      );
      if (step.predicted.fluidFlow > 0) expect(ids).toContain('charge/evaporation');
      const duty = step.explanations.find((e) => e.id === 'ladder/injector-duty');
      expect(duty?.inputs.find((i) => i.symbol === 'd')?.value).toBe(step.predicted.injectorDuty);
      for (const gate of step.gates)
        expect(explainGate(gate) === null).toBe(gate.measured === null && gate.predicted === null);
    }
  });
  it('reads as JSON in the promised shape', () => {
    const json = ladderJson(ladderOf());
    expect(LadderJsonSchema.parse(JSON.parse(JSON.stringify(json)))).toEqual(json);
    expect(json.steps[2]).toMatchObject({ kind: 'boost', from: 100, to: 110, unit: 'kPa' });
    const setup = sampleSetup();
    const mixture = mixtureJson(unwrap(mixtureOfSetup(setup, ladderOf().plan, 0.9)));
    expect(MixtureJsonSchema.parse(JSON.parse(JSON.stringify(mixture)))).toEqual(mixture);
  });
});

describe('recomputed from what was measured', () => {
  it('leaves out what is done and starts where the ledger stands', () => {
    const ladder = ladderOf({ ledger: [driven.baseline, driven.spray, driven.boost] });
    expect(kinds(ladder)).not.toContain('baseline');
    expect(kinds(ladder)).not.toContain('boost');
    expect(ladder.steps[0]?.kind).toBe('spark');
    expect(ladder.standing.boost).toBe(110e3);
  });
  it('takes boost driven without knock for shown, which raises the low end of the room', () => {
    const before = ladderOf({ ledger: [driven.baseline, driven.spray] });
    const after = ladderOf({ ledger: [driven.baseline, driven.spray, driven.boost] });
    expect(after.headroom?.boost[0]).toBeGreaterThan(before.headroom?.boost[0] ?? Infinity);
  });
  it('carries the measured gain into the power it predicts', () => {
    const ledger = [driven.baseline, driven.spray];
    const plain = ladderOf({ ledger }).steps[0]?.predicted.power?.[0] ?? 0;
    const better = [driven.baseline, { ...driven.spray, verdict: verdict('gain', 0.05) }];
    expect(ladderOf({ ledger: better }).steps[0]?.predicted.power?.[0]).toBeGreaterThan(plain);
  });
  it('stops taking spark once a step brings less than the margin', () => {
    const flat = entry('spark', 'spark', { to: Math.PI / 180, verdict: verdict('equivalent', 0.002) });
    const ladder = ladderOf({ ledger: [driven.baseline, driven.spray, driven.boost, flat] });
    expect(kinds(ladder)).not.toContain('spark');
    expect(ladder.notes.map((n) => n.code)).toContain('ladder/spark-brings-little');
  });
  it('stands on the last good entry where one was dropped or lost power', () => {
    const dropped = { ...driven.boost, state: 'dropped' as const };
    expect(ladderOf({ ledger: [driven.baseline, driven.spray, dropped] }).standing.boost).toBe(100e3);
    const lost = { ...driven.boost, verdict: verdict('loss', -0.03) };
    expect(ladderOf({ ledger: [driven.baseline, driven.spray, lost] }).standing.lastGood?.id).toBe('spray');
  });
  it('plans the spray again after a clear loss: over-feed', () => {
    const overfed = { ...driven.spray, verdict: verdict('loss', -0.05) };
    expect(kinds(ladderOf({ ledger: [driven.baseline, overfed] }))[0]).toBe('spray');
  });
});

describe('what must change the ladder', () => {
  const knocked = (events: number) => [
    driven.baseline,
    driven.spray,
    { ...driven.boost, measured: { ...driven.boost.measured, knockEvents: events } },
  ];
  it('a knock event: halves from the last good boost, ending below where it knocked', () => {
    const ladder = ladderOf({ ledger: knocked(1) });
    expect(ladder.standing.boost).toBe(100e3);
    expect(topBoost(ladder)).toBeLessThan(110e3);
    for (const step of ladder.steps.filter((s) => s.kind === 'boost')) expect(step.isHalf).toBe(true);
    expect(ladder.caps[0]?.end).toBe('measured-knock');
  });
  it('two knock events: no more boost than before', () => {
    const ladder = ladderOf({ ledger: knocked(2) });
    expect(kinds(ladder)).not.toContain('boost');
    expect(topSpark(ladder)).toBeLessThanOrEqual(topSpark(ladderOf()));
  });
  it('a weak pump: boost ends where it can no longer feed it, with less room and the reason said', () => {
    const bucket = { ...sampleSetup().fluidSystem.bucket, points: [] };
    const pump = { ...sampleSetup().fluidSystem.pump, setPressure_kPa: 230 };
    const ladder = ladderOf({ setup: sampleSetup({ fluidSystem: { pump, bucket } }) });
    expect(ladder.caps[0]?.end).toBe('fluid');
    expect(topBoost(ladder)).toBeLessThan(topBoost(ladderOf()));
    expect(ladder.headroom?.boost[1]).toBeLessThan(ladderOf().headroom?.boost[1] ?? 0);
  });
  it('a pump weaker than boost: no ladder, but the problem in words', () => {
    const bucket = { ...sampleSetup().fluidSystem.bucket, points: [] };
    const pump = { ...sampleSetup().fluidSystem.pump, setPressure_kPa: 120 };
    const answer = planLadder(sampleLadder({ setup: sampleSetup({ fluidSystem: { pump, bucket } }) }));
    expect(answer.ok ? [] : answer.problems.map((p) => p.code)).toContain('delivery/pump-weaker-than-boost');
  });
  it('a hot day: less room, hotter charge, less boost or spark', () => {
    const hot = ladderOf({ today: { ambient_C: 38, barometer_kPa: null, relativeHumidity_percent: null } });
    const cool = ladderOf();
    expect(hot.headroom?.boost[1]).toBeLessThan(cool.headroom?.boost[1] ?? 0);
    const at = (l: Ladder) => l.steps.find((s) => s.kind === 'spray')?.predicted.intake ?? 0;
    expect(at(hot)).toBeGreaterThan(at(cool) + 15);
    const closeness = (l: Ladder) =>
      l.steps[0]?.gates.find((g) => g.quantity === 'intake')?.predicted?.[1] ?? 0;
    expect(closeness(hot)).toBeGreaterThan(closeness(cool));
    expect(topBoost(hot) + 10e3 * topSpark(hot)).toBeLessThan(topBoost(cool) + 10e3 * topSpark(cool));
  });
  it('a hot day with a low limit: intake temperature ends the climb', () => {
    const limits = ladderLimits({ ...sampleLimits, intake_C: 50 });
    const today = { ambient_C: 30, barometer_kPa: null, relativeHumidity_percent: null };
    const ladder = ladderOf({ limits, today });
    expect(ladder.caps.map((c) => c.end)).toContain('intake');
    expect(topBoost(ladder)).toBe(100e3);
  });
  it('a small MAP sensor: boost ends 5 % below its end', () => {
    const ladder = ladderOf({ setup: sampleSetup({ engine: { mapSensor_kPa: 218 } }) });
    expect(ladder.caps[0]?.end).toBe('map-sensor');
    expect(topBoost(ladder)).toBeLessThanOrEqual(0.95 * 218e3 - 100.6e3 + 1);
    expect(topBoost(ladder)).toBeGreaterThan(100e3);
  });
  it('small injectors: boost ends at the duty limit', () => {
    const injectors = sampleSetup().engine.injectors;
    const duty = injectors?.duty.map((d) => ({ ...d, duty_percent: d.duty_percent + 7 })) ?? [];
    const setup = sampleSetup({ engine: { injectors: injectors && { ...injectors, duty } } });
    const ladder = ladderOf({ setup });
    expect(ladder.caps[0]?.end).toBe('injectors');
    for (const step of ladder.steps) expect(step.predicted.injectorDuty).toBeLessThanOrEqual(0.8501);
  });
  it('a small fuel pump: boost ends at 90 % of what it delivers, and the gate foretells it', () => {
    const big = ladderOf({ setup: sampleSetup({ engine: { fuelPump_L_h: 200 } }) });
    expect(big.caps[0]?.end).toBe('target');
    const need = big.steps.at(-1)?.gates.find((g) => g.quantity === 'fuelPump')?.predicted?.[1] ?? 0;
    // 200 kW at some 0.3 kg/kWh and 0.745 kg/L is about 80 L/h.
    expect(need * 200).toBeGreaterThan(65);
    expect(need * 200).toBeLessThan(105);
    // A pump that the target would take to 93 %.
    const small = ladderOf({ setup: sampleSetup({ engine: { fuelPump_L_h: (need * 200) / 0.93 } }) });
    expect(small.caps[0]?.end).toBe('fuel-pump');
    expect(topBoost(small)).toBeLessThan(topBoost(big));
    for (const step of small.steps.filter((s) => s.kind === 'boost'))
      expect(step.gates.find((g) => g.quantity === 'fuelPump')?.predicted?.[1]).toBeLessThanOrEqual(0.9001);
  });
  it('a fuel pump that nobody stated: no gate and no end is made up for it', () => {
    const ladder = ladderOf({ setup: sampleSetup({ engine: { fuelPump_L_h: null } }) });
    expect(ladder.caps.map((c) => c.end)).not.toContain('fuel-pump');
    expect(ladder.steps[0]?.gates.map((g) => g.quantity)).not.toContain('fuelPump');
  });
  it('earlier spark at the shown point leaves less of it, and says where the number came from', () => {
    const at = (shownSpark_deg: number | null) =>
      ladderOf({ setup: sampleSetup({ engine: { shownSpark_deg } }) });
    const practice = (l: Ladder) =>
      l.notes.some((n) => n.code === 'charge/practice-default' && n.facts.what === 'spark');
    expect(practice(at(null))).toBe(true);
    expect(practice(at(18))).toBe(false);
    expect(at(18).headroom?.boost).not.toEqual(at(8).headroom?.boost);
  });
  it('the user’s own ceiling always holds', () => {
    const limits = ladderLimits({ ...sampleLimits, boostCeiling_kPa: 105 });
    expect(topBoost(ladderOf({ limits }))).toBe(105e3);
  });
  it('no shown point: no headroom is claimed and every step is half', () => {
    const baseline = { ...driven.baseline, measured: { ...driven.baseline.measured, knockEvents: null } };
    const setup = sampleSetup({ engine: { soundBoost_kPa: null } });
    const ladder = ladderOf({ setup, ledger: [baseline, driven.spray] });
    expect(ladder.headroom).toBeNull();
    for (const step of ladder.steps.filter((s) => s.kind === 'boost')) expect(step.isHalf).toBe(true);
    expect(ladder.notes.map((n) => n.code)).toContain('ladder/no-shown-point');
  });
  it('an engine known to knock: the room ends there', () => {
    const ladder = ladderOf({ setup: sampleSetup({ engine: { knockLimitedBoost_kPa: 100 } }) });
    expect(ladder.headroom?.isKnockLimited).toBe(true);
  });
  it('hot measured intake closes its gate but undoes nothing', () => {
    const hot = { ...driven.boost, measured: { ...sprayed, boost: 110e3, hottestIntake: celsius(62) } };
    const { standing } = ladderOf({ ledger: [driven.baseline, driven.spray, hot] });
    expect(standing.last?.closed.map((g) => g.quantity)).toEqual(['intake']);
    expect(standing.boost).toBe(110e3);
  });
});
