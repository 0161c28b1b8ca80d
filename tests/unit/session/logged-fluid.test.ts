import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planOf, SetupSchema } from '../../../core/injection/index.ts';
import type { Log } from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import {
  type AnalysedPull,
  loggedFluid,
  type RunAnalysis,
  type Session,
  SessionSchema,
  withLoggedFluid,
} from '../../../core/session/index.ts';
import { sampleLog } from '../../support/sample-logs.ts';
import { sampleFolder } from '../../support/sample-truth.ts';

const session = SessionSchema.parse(
  JSON.parse(readFileSync(new URL('fenmoor-hatch/session.json', sampleFolder), 'utf8')),
);
const setup = SetupSchema.parse(JSON.parse(readFileSync(new URL('setup.json', sampleFolder), 'utf8')));

/** A log of the sample as the session has it analysed, every pull counting. */
function analysed(path: string): RunAnalysis {
  const { log, pulls } = sampleLog(path);
  return analysisOf(log, pulls);
}
function analysisOf(log: Log, pulls: ReturnType<typeof sampleLog>['pulls'], counts = true): RunAnalysis {
  return {
    log,
    pulls: pulls.map(
      (pull, i): AnalysedPull => ({
        id: `pull-${i}`,
        runId: 'run',
        pull,
        counts,
        droppedBecause: null,
        decisions: [],
        trimmedBecause: null,
        isTrimmed: false,
        power: null,
        problems: [],
      }),
    ),
    warnings: [],
    problems: [],
  };
}
/** A ledger of two entries, each with one run. */
const twoEntries = (): Session => ({
  ...session,
  ledger: session.ledger
    .slice(0, 2)
    .map((entry, i) => ({ ...entry, runs: [{ runId: `run-${i}`, from_s: null, to_s: null }] })),
});

describe('fluid from the logs', () => {
  const sprayed = analysed('logs/1-spray-a.csv');
  const dry = analysed('logs/0-baseline-a.csv');

  it('is that of the newest entry that sprayed, by its flow channel', () => {
    const found = loggedFluid(
      twoEntries(),
      new Map([
        ['run-0', dry],
        ['run-1', sprayed],
      ]),
    );
    expect(found?.entryId).toBe(session.ledger[1]?.id);
    expect(found?.pulls).toBe(sprayed.pulls.length);
    // Common practice: a pull uses 15 to 35 mL; the sample's nozzle brings 140 mL/min for some 6 s.
    const perPull = ((found?.fluid ?? 0) * 1e6) / (found?.pulls ?? 1);
    expect(perPull).toBeGreaterThan(8);
    expect(perPull).toBeLessThan(35);
  });

  it('is nothing where no pull sprayed, or none counts', () => {
    expect(loggedFluid(twoEntries(), new Map([['run-0', dry]]))).toBeNull();
    const dropped = analysisOf(
      sprayed.log,
      sprayed.pulls.map((p) => p.pull),
      false,
    );
    expect(loggedFluid(twoEntries(), new Map([['run-1', dropped]]))).toBeNull();
  });

  it('is what endurance and refills are worked out from, and the plan says so', () => {
    const found = loggedFluid(twoEntries(), new Map([['run-1', sprayed]]));
    const refills = [
      { filled_L: ((found?.fluid ?? 0) * 1e3 * 12) / (found?.pulls ?? 1), pulls: 12, note: '' },
    ];
    const typed = { ...setup, fluidSystem: { ...setup.fluidSystem, refills } };
    const { endurance } = unwrap(planOf(withLoggedFluid(typed, found)));
    expect(endurance.isLogged).toBe(true);
    expect(endurance.perPull).toBeCloseTo((found?.fluid ?? 0) / (found?.pulls ?? 1), 12);
    expect(endurance.usedOverPlanned).toBeCloseTo(1, 9);
    const codes = endurance.notes.map((n) => n.code);
    expect(codes).toContain('injection/endurance-from-log');
    expect(codes).toContain('injection/refill-agrees');
  });

  it('does not overrule what somebody typed', () => {
    const typed = {
      ...setup,
      fluidSystem: { ...setup.fluidSystem, logged: { fluid_mL: 90, pulls: 3 } },
    };
    expect(withLoggedFluid(typed, { fluid: 1e-3, pulls: 1 })).toBe(typed);
  });
});
