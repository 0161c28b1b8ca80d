import type { Note } from '../result/index.ts';
import type { SprayContext } from './feed-curve.ts';
import { practice } from './practice.ts';
import { pressureAtPeak, type Strategy } from './strategy.ts';
import type { StrategyName } from './strategy-points.ts';

/** Mean distance from the need by which two ways must differ to be told apart, as a share of the mean need. */
const tie = 0.01;
/** Points nearer to each other than this share of peak boost are the same setting (common practice). */
const sameWithin = 0.02;

export type Recommendation = { readonly name: StrategyName; readonly reason: Note };

/**
 * Which strategy to drive: the one whose delivered flow stays nearest the need, unless stretching the ramp leaves
 * a slowed pump too little pressure to break the fluid up.
 */
export function recommendStrategy(context: SprayContext, strategies: readonly Strategy[]): Recommendation {
  const [later, beyond] = strategies.filter((s) => s.name !== 'by-hand');
  if (!later) throw new Error('there is always a later start');
  if (!beyond)
    return {
      name: later.name,
      reason: { code: 'injection/recommended-only', facts: { strategy: later.name } },
    };
  if (context.system.metering === 'pump-speed') {
    const [most, left] = [later, beyond].map((s) => pressureAtPeak(context, s));
    if (most !== undefined && left !== undefined && left < practice.coarseBelow * most)
      return {
        name: later.name,
        reason: { code: 'injection/recommended-for-drops', facts: { strategy: later.name } },
      };
  }
  // 1 %: no more than rounding tells them apart, and then the one that ends full at peak is easier to check.
  if (Math.abs(beyond.misfeed - later.misfeed) <= tie)
    return {
      name: later.name,
      reason: {
        code: 'injection/recommended-tie',
        facts: {
          strategy: later.name,
          misfeed: later.misfeed,
          isSame:
            Math.abs(later.start - beyond.start) + Math.abs(later.full - beyond.full) <
            sameWithin * context.path.peakBoost,
        },
      },
    };
  const [best, other] = beyond.misfeed < later.misfeed ? [beyond, later] : [later, beyond];
  return {
    name: best.name,
    reason: {
      code: 'injection/recommended-because',
      facts: { strategy: best.name, misfeed: best.misfeed, otherMisfeed: other.misfeed },
    },
  };
}
