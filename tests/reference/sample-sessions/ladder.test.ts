import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type EntryPulls, evidenceOfPull } from '../../../core/compare/index.ts';
import { planOf } from '../../../core/injection/index.ts';
import {
  chargeModel,
  closedGates,
  fluidOfPulls,
  type Measured,
  nextStep,
  planLadder,
} from '../../../core/ladder/index.ts';
import { findPulls, readLog } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import {
  type Session,
  SessionSchema,
  SetupSchema,
  sessionLadder,
  sessionLedger,
} from '../../../core/session/index.ts';
import { sampleCar, sampleConditions, samplePower } from '../../support/sample-logs.ts';
import { sampleFolder, truth } from '../../support/sample-truth.ts';

const read = (name: string) => readFileSync(new URL(name, sampleFolder));

describe('the ladder of the bundled session, from its own logs', () => {
  let session: Session;
  let pulls: EntryPulls[];
  let verdicts: { entryId: string; verdict: ReturnType<typeof sessionLedger>['lines'][number]['verdict'] }[];

  /** The session as it stood after so many entries. */
  const after = (count: number): Session => ({ ...session, ledger: session.ledger.slice(0, count) });
  const ladderAfter = (count: number) => unwrap(sessionLadder(after(count), { pulls, verdicts }));

  beforeAll(() => {
    const stored = JSON.parse(read('fenmoor-hatch/session.json').toString());
    const setup = SetupSchema.parse(JSON.parse(read('setup.json').toString()));
    session = { ...SessionSchema.parse(stored), setup };
    let order = 0;
    pulls = truth.entries.map(({ id, files }) => ({
      id,
      repeats: null,
      pulls: files.flatMap(({ file }) => {
        const log = unwrap(readLog(read(`logs/${file}`), { file }));
        return findPulls(log, sampleCar).pulls.map((pull) =>
          evidenceOfPull(log, pull, samplePower(log, pull), {
            entryId: id,
            order: order++,
            conditions: sampleConditions,
            mass_kg: sampleCar.mass_kg,
          }),
        );
      }),
    }));
    verdicts = sessionLedger(session, pulls, null).lines.map(({ entryId, verdict }) => ({
      entryId,
      verdict,
    }));
  });

  it('measured every gate that has a channel', () => {
    const { ledger } = ladderAfter(3);
    const boost = ledger[2]?.measured as Measured;
    expect(boost.pulls).toBe(3);
    expect(boost.manifoldPressure).toBeGreaterThan(205e3);
    expect(boost.manifoldPressure).toBeLessThan(225e3);
    expect(boost.leanestLambda).toBeLessThan(0.9);
    expect(boost.injectorDuty).toBeGreaterThan(0.7);
    expect(boost.hottestIntake).toBeGreaterThan(290);
    expect(boost.fluidFlow).toBeGreaterThan(1e-6);
    expect(boost.lowestFluidPressure).toBeGreaterThan(100e3);
  });

  it('would have planned the story: spray after the baseline, then boost to 1.1 bar, then spark', () => {
    const first = (count: number) => {
      const ladder = unwrap(planLadder(ladderAfter(count)));
      return ladder.steps[0];
    };
    expect(first(1)?.kind).toBe('spray');
    expect(first(2)).toMatchObject({ kind: 'boost', from: 100e3, to: 110e3 });
    expect(first(3)?.kind).toBe('spark');
  });

  it('closes no gate that undoes an entry before the confounded one', () => {
    const { standing } = unwrap(planLadder(ladderAfter(4)));
    for (const entry of standing.entries)
      expect(closedGates(entry.gates).map((g) => `${entry.id} ${g.quantity} ${g.measured}`)).toEqual([]);
  });

  it('asks to drive the confounded entry again rather than to go on', () => {
    const next = unwrap(nextStep(ladderAfter(session.ledger.length)));
    expect(['drive-again', 'go-back']).toContain(next.kind);
    expect(next.step).toBeNull();
  });

  it('reads the fluid that arrived back from the fuel trim, against the truth of the sample', () => {
    const { setup } = session;
    if (setup === null) throw new Error('the test gave it one');
    const plan = unwrap(planOf(setup));
    const model = unwrap(chargeModel(setup, plan));
    const of = (id: string) => pulls.find((p) => p.id === id)?.pulls ?? [];
    const found = unwrap(fluidOfPulls(setup, plan, model, of('baseline'), of('spray')));
    const spray = truth.entries.find((e) => e.id === 'spray');
    const trueRatios = spray?.files.flatMap((f) => f.pulls.map((p) => p.fluidOverFuel)) ?? [];
    const trueRatio = trueRatios.reduce((a, b) => a + b, 0) / trueRatios.length;
    // Against petrol at the same place: the truth is fluid over fuel where the spray is full.
    const petrol = found?.explanation.inputs.find((i) => i.symbol === 'm_petrol')?.value ?? Number.NaN;
    const [low, high] = (found?.interval95 ?? [Number.NaN, Number.NaN]).map((f) => f / petrol);
    console.log(
      `fluid over fuel from the trim: ${low?.toFixed(3)} to ${high?.toFixed(3)}, truth ${trueRatio.toFixed(3)}`,
    );
    expect(low).toBeLessThan(trueRatio);
    expect(high).toBeGreaterThan(trueRatio);
    expect(high).toBeLessThan(0.4);
  });

  it('says nothing from trims at two boosts', () => {
    const { setup } = session;
    if (setup === null) throw new Error('the test gave it one');
    const plan = unwrap(planOf(setup));
    const model = unwrap(chargeModel(setup, plan));
    const of = (id: string) => pulls.find((p) => p.id === id)?.pulls ?? [];
    expect(unwrap(fluidOfPulls(setup, plan, model, of('baseline'), of('boost')))).toBeNull();
  });

  it('says whether the setup sheet is missing', () => {
    const answer = sessionLadder({ ...session, setup: null }, { pulls, verdicts });
    expect(answer.ok ? [] : answer.problems.map((p) => p.code)).toEqual(['session/no-setup']);
  });
});
