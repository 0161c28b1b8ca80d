import { baseTune, type Tune } from './tune.ts';

/** The verdict kinds that would tell an entry's story right. */
export type Expected = 'gain' | 'loss' | 'equivalent' | 'not-comparable';

/** One ledger entry: what the tuner wrote down, what was really set, and which files hold its pulls. */
export type Chapter = {
  readonly id: string;
  readonly kind: 'baseline' | 'spray' | 'boost' | 'spark' | 'mixture';
  readonly note: string;
  readonly change: {
    readonly from: { readonly value: number; readonly unit: string } | null;
    readonly to: { readonly value: number; readonly unit: string } | null;
    readonly where: string;
  } | null;
  readonly tune: Tune;
  /** What the tune would be had only the declared change been made; the same as `tune` where it was. */
  readonly declaredTune: Tune;
  readonly expected: readonly Expected[];
  /** Pulls in each file; `paused` files have the logger stopped while the car went round. */
  readonly files: readonly { readonly name: string; readonly pulls: number; readonly isPaused: boolean }[];
};

const sprayed: Tune = { ...baseTune, isSprayOn: true };
const boosted: Tune = { ...sprayed, boostTarget: 110e3 };
const sparked: Tune = { ...boosted, loadedSpark_deg: 1 };
const richer: Tune = { ...sparked, lambdaTarget: 0.82 };
const sparkedAgain: Tune = { ...richer, loadedSpark_deg: 2 };

const file = (name: string, pulls: number, isPaused = false) => ({ name, pulls, isPaused });

/** The invented day of the Fenmoor hatch, in order. */
export const story: readonly Chapter[] = [
  {
    id: 'baseline',
    kind: 'baseline',
    note: 'Tank full, pump off. Third gear, same straight each lap.',
    change: null,
    tune: baseTune,
    declaredTune: baseTune,
    expected: [],
    files: [file('0-baseline-a.csv', 2, true), file('0-baseline-b.csv', 1), file('0-baseline-c.csv', 1)],
  },
  {
    id: 'spray',
    kind: 'spray',
    note: 'Full at 1.00 bar. Half water, half methanol by volume. Nothing else touched.',
    change: { from: null, to: { value: 0.4, unit: 'bar' }, where: '' },
    tune: sprayed,
    declaredTune: sprayed,
    expected: ['equivalent', 'loss'],
    files: [file('1-spray-a.csv', 3, true), file('1-spray-b.csv', 1)],
  },
  {
    id: 'boost',
    kind: 'boost',
    note: '',
    change: { from: { value: 1.0, unit: 'bar' }, to: { value: 1.1, unit: 'bar' }, where: '' },
    tune: boosted,
    declaredTune: boosted,
    expected: ['gain'],
    files: [file('2-boost-a.csv', 1), file('2-boost-b.csv', 1), file('2-boost-c.csv', 1)],
  },
  {
    id: 'spark',
    kind: 'spark',
    note: 'Ears and knock channel quiet.',
    change: { from: null, to: { value: 1, unit: 'deg' }, where: 'above 0.6 bar' },
    tune: sparked,
    declaredTune: sparked,
    expected: ['gain'],
    files: [file('3-spark-a.csv', 2, true), file('3-spark-b.csv', 1)],
  },
  {
    id: 'mixture',
    kind: 'mixture',
    note: 'Looking for exhaust temperature, not power.',
    change: {
      from: { value: 0.84, unit: 'lambda' },
      to: { value: 0.82, unit: 'lambda' },
      where: '',
    },
    tune: richer,
    declaredTune: richer,
    expected: ['equivalent'],
    files: [file('4-mixture.csv', 3)],
  },
  {
    id: 'spark-again',
    kind: 'spark',
    note: 'Last one before the light went.',
    change: { from: null, to: { value: 1, unit: 'deg' }, where: 'above 0.6 bar' },
    // The boost control crept up by 6 kPa between the two entries; the tuner did not see it.
    tune: { ...sparkedAgain, boostTarget: 116e3 },
    declaredTune: sparkedAgain,
    expected: ['not-comparable'],
    files: [file('5-spark-again-a.csv', 1), file('5-spark-again-b.csv', 2, true)],
  },
];

/** The two files of the borrowed logger: boost step again, another day, one pull lifted half way. */
export const looseStory = [
  { name: 'before-1.00-bar.csv', tune: sprayed, pulls: 3, lifted_rpm: 4300 },
  { name: 'after-1.10-bar.csv', tune: boosted, pulls: 3, lifted_rpm: null },
] as const;
