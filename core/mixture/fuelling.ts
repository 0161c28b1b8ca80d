import type { Note } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import type { BlendDemand } from './blend-demand.ts';

/** How the engine control finds its fuel. */
export const fuellings = ['closed-loop', 'open-loop', 'mass-air'] as const;
export type Fuelling = (typeof fuellings)[number];

/** What the spray asks of the fuelling at one state of the engine. */
export type FuellingAnswer = {
  /** Petrol in the table, as a change over what stands there: 0 where the loop does it. */
  readonly tableChange: number;
  /** Trim that a loop on lambda will settle at, as a change of petrol; 0 where there is none. */
  readonly expectedTrim: number;
  /** Lambda where nobody changes anything. */
  readonly lambdaIfLeft: number;
  readonly notes: readonly Note[];
};

/** A trim beyond this is close to what many controls allow (common practice: 15 to 25 %). */
const trimLimit = 0.15;

export function explainFuelling(fuelling: Fuelling, lambda: number, demand: BlendDemand): Explanation {
  const isLoop = fuelling === 'closed-loop';
  return {
    id: 'mixture/fuelling',
    formula: isLoop ? 'trim = -s' : 'table x (1 - s);   left alone: lambda / (1 + s)',
    inputs: [
      { symbol: 's', value: demand.alcoholShare, kind: 'share' },
      ...(isLoop
        ? []
        : ([
            { symbol: 'lambda', value: lambda, kind: 'lambda' },
            { symbol: 'left alone', value: demand.lambdaUncut, kind: 'lambda' },
          ] as const)),
    ],
    source: 'element balance; which control does what: common practice',
    validRange: [{ symbol: 's', from: 0, to: 0.3, kind: 'share' }],
  };
}

/**
 * What a fuelling strategy does with the alcohol, and what is left for the tuner.
 *
 *   closed loop on lambda:  trim = -alcohol share; leave the table alone
 *   open loop, mass air:    table x (1 - alcohol share); left alone, lambda / (1 + alcohol share)
 *
 * A mass-air meter sits before the nozzle and weighs air alone, so its fuel is that of the air, as in open loop.
 *
 * Source: element balance; who does what: common practice.
 */
export function fuellingAnswer(fuelling: Fuelling, lambda: number, demand: BlendDemand): FuellingAnswer {
  const share = demand.alcoholShare;
  if (share === 0)
    return {
      tableChange: 0,
      expectedTrim: 0,
      lambdaIfLeft: lambda,
      notes: [{ code: 'mixture/water-alone', facts: {} }],
    };
  if (fuelling === 'closed-loop') {
    const notes: Note[] = [
      { code: 'mixture/loop-cuts-by-itself', facts: { share } },
      { code: 'mixture/chased-trim-leans', facts: {} },
    ];
    if (share > 0.7 * trimLimit)
      notes.push({ code: 'mixture/trim-near-its-end', facts: { share, limit: trimLimit } });
    return { tableChange: 0, expectedTrim: -share, lambdaIfLeft: lambda, notes };
  }
  // Once cut by hand, a dry tank leaves the engine with the cut and without the alcohol.
  const dry = lambda / (1 - share);
  const notes: Note[] = [
    { code: 'mixture/cut-by-hand', facts: { share, lambdaWithout: demand.lambdaUncut } },
    { code: 'mixture/dry-is-lean', facts: { lambda: dry } },
  ];
  if (fuelling === 'mass-air') notes.push({ code: 'mixture/mass-air-misses-vapour', facts: {} });
  return { tableChange: -share, expectedTrim: 0, lambdaIfLeft: demand.lambdaUncut, notes };
}
