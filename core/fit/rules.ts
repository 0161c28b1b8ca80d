/** What goes wrong where a rule is broken. */
export const hazards = ['engine', 'fire', 'health', 'reliability'] as const;
export type Hazard = (typeof hazards)[number];

/** What a rule looks at to know whether it applies, and what the setup already tells. Null is unknown. */
export type FitFacts = {
  readonly compressor: 'turbo' | 'centrifugal' | 'roots' | 'screw' | null;
  /** Where nozzles spray; empty while unknown. */
  readonly places: readonly ('before-compressor' | 'before-cooler' | 'after-cooler' | 'manifold' | 'port')[];
  readonly hasCooler: boolean | null;
  readonly hasAlcohol: boolean;
  readonly hasMethanol: boolean;
};

export type Rule = {
  readonly id: string;
  readonly hazard: Hazard;
  /** 1 a nuisance, 6 fix before driving, 10 breaks an engine or burns a car. */
  readonly weight: number;
  readonly applies: (facts: FitFacts) => boolean;
  /** What the setup says by itself; null where only the user can tell. */
  readonly fromSetup?: (facts: FitFacts) => boolean | null;
  /** False where "not here" is no answer: every car has one. */
  readonly canBeAbsent?: boolean;
};

const always = () => true;
const spins = (f: FitFacts) => f.compressor === 'turbo' || f.compressor === 'centrifugal';
/** Null while no place is known. */
const placed = (f: FitFacts, isSound: (places: FitFacts['places']) => boolean) =>
  f.places.length === 0 ? null : isSound(f.places);
const displaces = (f: FitFacts) => f.compressor === 'roots' || f.compressor === 'screw';

/**
 * The fit review. A question that "yes" answers soundly stands with reason and remedy in core/words, one per id.
 *
 * Source: common practice; the danger of liquid in a cylinder: see hydraulic-lock.ts.
 */
export const fitRules = [
  {
    id: 'after-the-blades',
    hazard: 'engine',
    weight: 8,
    applies: spins,
    fromSetup: (f) => placed(f, (places) => !places.includes('before-compressor')),
    canBeAbsent: false,
  },
  {
    id: 'after-the-cooler',
    hazard: 'engine',
    weight: 7,
    applies: (f) => f.hasCooler !== false && !displaces(f),
    fromSetup: (f) => placed(f, (places) => !places.includes('before-cooler')),
  },
  {
    id: 'before-the-throttle',
    hazard: 'engine',
    weight: 4,
    applies: (f) => spins(f) && f.hasCooler === true,
    // Behind the throttle it can be sound too: only the user can tell.
    fromSetup: (f) => placed(f, (places) => places.every((p) => p === 'after-cooler')) || null,
  },
  {
    id: 'before-the-rotors',
    hazard: 'reliability',
    weight: 3,
    applies: displaces,
    fromSetup: (f) => placed(f, (places) => places.every((p) => p === 'before-compressor')),
    canBeAbsent: false,
  },
  { id: 'away-from-blow-off', hazard: 'fire', weight: 5, applies: spins },
  { id: 'no-siphon', hazard: 'engine', weight: 10, applies: always, canBeAbsent: false },
  {
    id: 'no-vacuum-draw',
    hazard: 'engine',
    weight: 9,
    applies: (f) =>
      f.places.length === 0 || f.places.some((p) => p === 'manifold' || p === 'port') || displaces(f),
  },
  { id: 'check-valve', hazard: 'engine', weight: 8, applies: always, canBeAbsent: false },
  { id: 'pump-below-tank', hazard: 'reliability', weight: 4, applies: always, canBeAbsent: false },
  { id: 'tank-away-from-heat', hazard: 'fire', weight: 8, applies: (f) => f.hasAlcohol, canBeAbsent: false },
  { id: 'filter-before-nozzle', hazard: 'reliability', weight: 6, applies: always, canBeAbsent: false },
  { id: 'hoses-pressure-tested', hazard: 'fire', weight: 8, applies: always, canBeAbsent: false },
  { id: 'fuse-and-relay', hazard: 'fire', weight: 7, applies: always, canBeAbsent: false },
  { id: 'ignition-only', hazard: 'engine', weight: 7, applies: always, canBeAbsent: false },
  { id: 'primed-and-measured', hazard: 'engine', weight: 7, applies: always, canBeAbsent: false },
  { id: 'low-level-warning', hazard: 'engine', weight: 7, applies: always, canBeAbsent: false },
  { id: 'fail-safe-wired', hazard: 'engine', weight: 10, applies: always, canBeAbsent: false },
  { id: 'fail-safe-proven', hazard: 'engine', weight: 9, applies: always, canBeAbsent: false },
  { id: 'materials', hazard: 'reliability', weight: 6, applies: (f) => f.hasAlcohol, canBeAbsent: false },
  { id: 'storage', hazard: 'fire', weight: 8, applies: (f) => f.hasAlcohol, canBeAbsent: false },
  { id: 'out-of-the-cabin', hazard: 'health', weight: 8, applies: (f) => f.hasAlcohol, canBeAbsent: false },
  {
    id: 'gloves-and-goggles',
    hazard: 'health',
    weight: 8,
    applies: (f) => f.hasMethanol,
    canBeAbsent: false,
  },
  { id: 'clean-water', hazard: 'reliability', weight: 4, applies: always, canBeAbsent: false },
  { id: 'boost-leak-test', hazard: 'engine', weight: 6, applies: always, canBeAbsent: false },
  { id: 'sensors-plausible', hazard: 'engine', weight: 8, applies: always, canBeAbsent: false },
] as const satisfies readonly Rule[];

export type FitRuleId = (typeof fitRules)[number]['id'];
