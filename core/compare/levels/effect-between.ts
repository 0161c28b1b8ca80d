import type { Effect } from '../decide.ts';
import {
  intervalOf,
  pooledVariance,
  satterthwaite,
  type TMixture,
  type TPart,
  tQuantile,
  type VariancePart,
} from '../statistics/index.ts';
import type { Day, DayFit, SuspectName } from './day-fit.ts';
import { above } from './pool.ts';

export type EffectFound = {
  readonly effect: Effect;
  readonly repeatability: { readonly variance: number; readonly degrees: number };
  /** Share of power that holding each suspect equal added, with its deviation. */
  readonly corrections: Readonly<Partial<Record<SuspectName, Correction>>>;
  /** Deviations of the two sides where they differ beyond chance. */
  readonly ownScatter: readonly [number, number] | null;
};

export type Correction = {
  readonly share: number;
  readonly deviation: number;
  /** Of one unit of the suspect, weighed by the chance that it is at work. */
  readonly coefficient: number;
};

/**
 * Effect between two setups of a day with its nuisances held equal.
 *
 * @param judged            indices of before and after
 * @param lastingVariance   doubt that no pull can shrink: the weather between the sides
 */
export function effectBetween(
  day: Day,
  fit: DayFit,
  judged: readonly [number, number],
  lastingVariance: number,
): EffectFound {
  const weights = Array.from({ length: day.setups }, (_, i) =>
    i === judged[1] ? 1 : i === judged[0] ? -1 : 0,
  );
  const sum = fit.combine(weights);
  const [nb, na] = judged.map((setup) => day.setupOf.filter((s) => s === setup).length) as [number, number];
  const ofPulls = fit.variance * (1 / nb + 1 / na);
  const plain = likeOneT(sum.stories, sum.degrees);
  const nuisance = Math.max(0, plain.variance - ofPulls);
  const own = ownVariances(day, judged);
  const stories = own
    ? [
        ownStory(sum.difference, [
          { variance: own[0].variance / nb, degrees: own[0].degrees },
          { variance: own[1].variance / na, degrees: own[1].degrees },
          { variance: nuisance + lastingVariance, degrees: Infinity },
        ]),
      ]
    : lastingVariance > 0
      ? sum.stories.map((story) => widened(story, lastingVariance))
      : sum.stories;
  const [first] = stories;
  const asOne =
    stories === sum.stories ? plain : likeOneT(stories, own && first ? first.degrees : sum.degrees);
  return {
    effect: {
      difference: sum.difference,
      stories,
      ...asOne,
      pullVariance: fit.variance,
      nuisance,
      lasting: lastingVariance,
      pulls: [nb, na],
    },
    repeatability: { variance: fit.variance, degrees: fit.degrees },
    corrections: Object.fromEntries(
      Object.entries(sum.corrections).flatMap(([name, share]) => {
        const told = fit.suspect(name as SuspectName);
        return told ? [[name, correctionOf(share, told)]] : [];
      }),
    ),
    ownScatter: own && [Math.sqrt(own[0].variance), Math.sqrt(own[1].variance)],
  };
}

function ownStory(centre: number, parts: readonly VariancePart[]): TPart {
  const { variance, degrees } = satterthwaite(parts);
  return { weight: 1, centre, scale: Math.sqrt(variance), degrees };
}

/** A story with a doubt more, of known size; its scatter is known too, so it stays normal. */
function widened(story: TPart, variance: number): TPart {
  return { ...story, scale: Math.sqrt(story.scale ** 2 + variance) };
}

/** The one t whose interval is as wide as that of all stories: to plan further pulls by. */
function likeOneT(
  stories: TMixture,
  degrees: number,
): { readonly variance: number; readonly degrees: number } {
  const [low, high] = intervalOf(stories);
  return { variance: ((high - low) / 2 / tQuantile(0.975, degrees)) ** 2, degrees };
}

/** Deviation of a correction: of its coefficient, over the distance that was corrected. */
function correctionOf(
  share: number,
  told: { readonly chance: number; readonly coefficient: number; readonly deviation: number },
): Correction {
  const coefficient = told.chance * told.coefficient;
  const distance = coefficient === 0 ? 0 : share / coefficient;
  return { share, coefficient, deviation: Math.abs(distance) * told.chance * told.deviation };
}

/** Each side's own variance, where they differ so much (1 %, either way) that one for both would mislead. */
function ownVariances(day: Day, judged: readonly [number, number]) {
  const [b, a] = judged.map((setup) => {
    const levels = day.levels.filter((_, i) => day.setupOf[i] === setup);
    return levels.length < 3 ? null : pooledVariance([levels]);
  });
  if (!b || !a) return null;
  return above(b, a) < 0.005 || above(a, b) < 0.005 ? ([b, a] as const) : null;
}
