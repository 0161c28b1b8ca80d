import type { DerivedChannel } from '../../core/log/index.ts';
import type { ScreenWords } from '../../core/words/index.ts';

type Example = Pick<DerivedChannel, 'formula' | 'kind'> & {
  readonly id: keyof ScreenWords['derived']['exampleNames'];
};

/** Formulas that tuners ask for, each a pattern for one's own. */
export const examples: readonly Example[] = [
  {
    id: 'pressureRatio',
    formula: '(boost + barometricPressure) / barometricPressure',
    kind: 'number',
  },
  { id: 'pressureRatioSea', formula: 'manifoldPressure / (101.325 kPa)', kind: 'number' },
  { id: 'boostError', formula: 'max(boostTarget - boost, 0 kPa)', kind: 'pressure' },
  { id: 'lambdaError', formula: 'lambda - lambdaTarget', kind: 'lambda' },
  { id: 'smoothLambda', formula: 'smooth(lambda, 0.3 s)', kind: 'lambda' },
  { id: 'power', formula: 'engineTorque * engineSpeed', kind: 'power' },
];
