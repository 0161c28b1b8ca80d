import type { TMixture } from '../statistics/index.ts';
import { fitLevels, type LevelData, type LevelFit } from './level-fit.ts';

/**
 * What may have moved power between pulls, by name: one value per pull, what its effect is before looking, and how
 * far that may be off. Several strengths are several stories of it; what their chances leave to one is that it is
 * not at work. A deviation of Infinity says that nothing is known.
 */
export type Suspect = {
  readonly values: Float64Array;
  readonly priorMean: number;
  readonly strengths: readonly { readonly deviation: number; readonly chance: number }[];
};
export type SuspectName = 'intake' | 'direction' | 'drift' | 'settling' | 'boost';

export type Day = Omit<LevelData, 'nuisances'> & {
  readonly suspects: Readonly<Partial<Record<SuspectName, Suspect>>>;
};

/** The day's levels fitted with every set of suspects, and how likely each set is. */
export type DayFit = {
  readonly variance: number;
  readonly degrees: number;
  /** Chance after looking, coefficient and deviation where it is at work; null for one that was no suspect. */
  readonly suspect: (
    name: SuspectName,
  ) => { readonly chance: number; readonly coefficient: number; readonly deviation: number } | null;
  /** What the suspects did to each pull, about the mean of its setup. */
  readonly within: Float64Array;
  readonly combine: (weights: readonly number[]) => DayCombination;
};

export type DayCombination = {
  readonly difference: number;
  /** The answers of all stories, each with its chance and for each scatter that pulls leave open. */
  readonly stories: TMixture;
  /** Degrees of freedom of the one t nearest to them, to plan by. */
  readonly degrees: number;
  /** What holding each suspect equal added to the difference. */
  readonly corrections: Readonly<Partial<Record<SuspectName, number>>>;
};

/**
 * What is known of repeatability before the first pull: hardly better than 0.3 % (common practice), and worth a third
 * of a pull. It keeps a story that explains a few pulls too well from claiming that they repeat without scatter.
 */
const practice = { variance: 0.003 ** 2, degrees: 0.3 };

/** Answers less likely than this move no bound by a thousandth of its width. */
const unheard = 1e-6;

type Told = {
  readonly names: readonly SuspectName[];
  readonly deviations: readonly number[];
  readonly prior: number;
};
type Story = { readonly names: readonly SuspectName[]; readonly fit: LevelFit; readonly weight: number };

/**
 * Levels of a day on which something beside the setups may have moved power. What is at work is itself in doubt: each
 * story is weighed by how well it explains all pulls, and an interval is read from all of them together, so that a
 * story that can't be ruled out keeps its say. Null where no repeatability is known.
 *
 * Source: model averaging: Hoeting et al., Statistical Science 14 (1999) 382, equations 1 to 3; chances by the
 *         likelihood with coefficients and scatter integrated out.
 */
export function fitDay(day: Day): DayFit | null {
  const names = Object.keys(day.suspects) as SuspectName[];
  const suspectOf = (name: SuspectName) => day.suspects[name] as Suspect;
  const unknown = names.filter((name) => suspectOf(name).strengths.some((s) => s.deviation === Infinity));
  const spare = day.levels.length - new Set(day.setupOf).size - unknown.length;
  if (!day.prior && spare <= 0) return null;
  const told = storiesOf(names, suspectOf).flatMap(({ names: at, deviations, prior }) => {
    const nuisances = at.map((name, i) => ({
      values: suspectOf(name).values,
      priorMean: suspectOf(name).priorMean,
      priorDeviation: deviations[i] as number,
    }));
    const fit = fitLevels({ ...day, prior: day.prior ?? practice, nuisances });
    return fit ? [{ names: at, fit, score: Math.log(prior) + fit.evidence }] : [];
  });
  if (told.length === 0) return null;
  const best = Math.max(...told.map((t) => t.score));
  const total = told.reduce((sum, t) => sum + Math.exp(t.score - best), 0);
  const stories = told.map((t): Story => ({ ...t, weight: Math.exp(t.score - best) / total }));
  const mean = (of: (story: Story) => number) => stories.reduce((sum, s) => sum + s.weight * of(s), 0);
  return {
    variance: mean((s) => s.fit.variance),
    degrees: mean((s) => s.fit.degrees),
    suspect(name) {
      const at = stories.filter((s) => s.names.includes(name));
      const chance = at.reduce((sum, s) => sum + s.weight, 0);
      if (chance === 0) return null;
      const within = (of: (story: Story, index: number) => number) =>
        at.reduce((sum, s) => sum + (s.weight / chance) * of(s, s.names.indexOf(name)), 0);
      const coefficient = within((s, i) => s.fit.coefficients[i] as number);
      const apart = within((s, i) => ((s.fit.coefficients[i] as number) - coefficient) ** 2);
      return {
        chance,
        coefficient,
        deviation: Math.sqrt(within((s, i) => s.fit.covariance[i]?.[i] as number) + apart),
      };
    },
    within: day.levels.map((_, i) => mean((s) => s.fit.within[i] as number)),
    combine(weights) {
      const sums = stories.map((story) => ({ story, sum: story.fit.combine(weights) }));
      const average = (of: (s: (typeof sums)[number]) => number) =>
        sums.reduce((total, s) => total + s.story.weight * of(s), 0);
      return {
        difference: average((s) => s.sum.difference),
        stories: sums.flatMap(({ story, sum }) =>
          sum.byScatter.flatMap((at) => {
            const weight = story.weight * at.weight;
            return weight < unheard ? [] : [{ ...at, weight, degrees: Number.POSITIVE_INFINITY }];
          }),
        ),
        degrees: average(({ sum }) => sum.degrees),
        corrections: Object.fromEntries(
          names.map((name) => [
            name,
            average(({ story, sum }) => sum.corrections[story.names.indexOf(name)] ?? 0),
          ]),
        ),
      };
    },
  };
}

/** Every set of suspects that may be at work, with its chance before looking. */
function storiesOf(
  names: readonly SuspectName[],
  suspectOf: (name: SuspectName) => Suspect,
): readonly Told[] {
  return names.reduce<readonly Told[]>(
    (stories, name) => {
      const { strengths } = suspectOf(name);
      const absent = 1 - strengths.reduce((sum, s) => sum + s.chance, 0);
      return stories.flatMap((s) => [
        ...strengths.map(({ deviation, chance }) => ({
          names: [...s.names, name],
          deviations: [...s.deviations, deviation],
          prior: s.prior * chance,
        })),
        ...(absent > 1e-9 ? [{ ...s, prior: s.prior * absent }] : []),
      ]);
    },
    [{ names: [], deviations: [], prior: 1 }],
  );
}
