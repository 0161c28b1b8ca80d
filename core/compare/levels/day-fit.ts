import { fitLevels, type LevelData, type LevelFit, type Nuisance } from './level-fit.ts';

/** What may have moved power between pulls, by name. `chance` is 1 where it surely does, before looking. */
export type Suspect = { readonly nuisance: Nuisance; readonly chance: number };
export type SuspectName = 'intake' | 'direction' | 'drift' | 'boost';

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
  readonly variance: number;
  readonly degrees: number;
  /** What holding each suspect equal added to the difference. */
  readonly corrections: Readonly<Partial<Record<SuspectName, number>>>;
};

/** Degrees of freedom that an uncertain suspect must leave. */
const sparePulls = 2;

type Story = { readonly names: readonly SuspectName[]; readonly fit: LevelFit; readonly weight: number };

/**
 * Levels of a day on which something beside the setups may have moved power. What is at work is itself in doubt:
 * the answers of all stories are weighed by how well each explains all pulls, and their disagreement widens the
 * interval. Null where no repeatability is known.
 *
 * Source: model averaging: Hoeting et al., Statistical Science 14 (1999) 382, equations 1 to 3.
 */
export function fitDay(day: Day): DayFit | null {
  const names = Object.keys(day.suspects) as SuspectName[];
  const suspectOf = (name: SuspectName) => day.suspects[name] as Suspect;
  const inside = day.levels.length - new Set(day.setupOf).size;
  const told = storiesOf(names, suspectOf).flatMap(({ at, prior }) => {
    // A story with as many suspects as there are spare pulls explains everything and leaves no scatter to judge by.
    const isTooRich = at.some((name) => suspectOf(name).chance < 1) && inside - at.length < sparePulls;
    if (isTooRich) return [];
    const fit = fitLevels({ ...day, nuisances: at.map((name) => suspectOf(name).nuisance) });
    return fit ? [{ names: at, fit, score: Math.log(prior) - fit.deviance / 2 }] : [];
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
      return {
        chance,
        coefficient: within((s, i) => s.fit.coefficients[i] as number),
        deviation: Math.sqrt(within((s, i) => s.fit.covariance[i]?.[i] as number)),
      };
    },
    within: day.levels.map((_, i) => mean((s) => s.fit.within[i] as number)),
    combine(weights) {
      const sums = stories.map((story) => ({ story, sum: story.fit.combine(weights) }));
      const average = (of: (s: (typeof sums)[number]) => number) =>
        sums.reduce((total, s) => total + s.story.weight * of(s), 0);
      const difference = average((s) => s.sum.difference);
      const apart = average((s) => (s.sum.difference - difference) ** 2);
      return {
        difference,
        variance: average((s) => s.sum.variance) + apart,
        degrees: average((s) => s.sum.degrees),
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
function storiesOf(names: readonly SuspectName[], suspectOf: (name: SuspectName) => Suspect) {
  return names.reduce<{ at: readonly SuspectName[]; prior: number }[]>(
    (stories, name) => {
      const { chance } = suspectOf(name);
      return stories.flatMap((s) => [
        ...(chance > 0 ? [{ at: [...s.at, name], prior: s.prior * chance }] : []),
        ...(chance < 1 ? [{ at: s.at, prior: s.prior * (1 - chance) }] : []),
      ]);
    },
    [{ at: [], prior: 1 }],
  );
}
