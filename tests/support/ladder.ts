import { readFileSync } from 'node:fs';
import { type Setup, SetupSchema } from '../../core/injection/index.ts';
import {
  type LadderEntry,
  type LadderInput,
  ladderLimits,
  type Measured,
  nothingMeasured,
} from '../../core/ladder/index.ts';
import { celsius } from '../../core/units/index.ts';
import { sampleFolder } from './sample-truth.ts';

const degree = Math.PI / 180;

/** setup.json of the sample, with changes to its engine and fluid system. */
export function sampleSetup(
  change: { engine?: Partial<Setup['engine']>; fluidSystem?: Partial<Setup['fluidSystem']> } = {},
): Setup {
  const json = JSON.parse(readFileSync(new URL('setup.json', sampleFolder), 'utf8'));
  const setup = SetupSchema.parse(json);
  return {
    ...setup,
    engine: { ...setup.engine, ...change.engine },
    fluidSystem: { ...setup.fluidSystem, ...change.fluidSystem },
  };
}

/** The sample session's own limits. */
export const sampleLimits = {
  leanestLambda: 0.9,
  injectorDuty_percent: 85,
  intake_C: 60,
  exhaust_C: 950,
  knockEvents: 1,
  mapCeiling_kPa: 285,
  boostCeiling_kPa: 120,
  fluidPressureLowest_kPa: 500,
};

/** Sound pulls: nothing near a limit. */
export const sound: Measured = {
  ...nothingMeasured,
  pulls: 4,
  knockEvents: 0,
  knockRetard_rad: 0,
  leanestLambda: 0.84,
  hottestIntake: celsius(38),
  hottestExhaust: celsius(880),
  injectorDuty: 0.78,
  manifoldPressure: 201e3,
  boost: 100e3,
  fuelPressureHeld: 1,
};
/** The same with the spray on. */
export const sprayed: Measured = { ...sound, lowestFluidPressure: 800e3, fluidFlow: 2.5e-6 };

export function verdict(
  kind: NonNullable<LadderEntry['verdict']>['kind'],
  share: number,
  half = 0.008,
): LadderEntry['verdict'] {
  const effect = share * 140e3;
  return {
    kind,
    effect,
    effectShare: share,
    interval95: [effect - half * 140e3, effect + half * 140e3],
    morePulls: kind === 'undecided' ? 2 : null,
    margin: 0.01,
  };
}

export function entry(id: string, kind: LadderEntry['kind'], change: Partial<LadderEntry> = {}): LadderEntry {
  return {
    id,
    kind,
    from: null,
    to: null,
    state: 'kept',
    verdict: kind === 'baseline' ? null : verdict('equivalent', 0),
    measured: kind === 'baseline' ? sound : sprayed,
    ...change,
  };
}

export const driven = {
  baseline: entry('baseline', 'baseline'),
  spray: entry('spray', 'spray', { to: 40e3, verdict: verdict('equivalent', -0.003) }),
  boost: entry('boost', 'boost', {
    from: 100e3,
    to: 110e3,
    verdict: verdict('gain', 0.051),
    measured: { ...sprayed, manifoldPressure: 212e3, boost: 111e3, injectorDuty: 0.8 },
  }),
  spark: entry('spark', 'spark', { to: degree, verdict: verdict('gain', 0.014) }),
};

export function sampleLadder(change: Partial<LadderInput> = {}): LadderInput {
  return {
    setup: sampleSetup(),
    limits: ladderLimits(sampleLimits),
    ledger: [],
    place: 'street',
    ...change,
  };
}
