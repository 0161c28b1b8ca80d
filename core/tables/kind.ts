import { fromSi, type ShownKind, toSi } from '../units/index.ts';

/** What a table tells the engine: when to fire, how much boost to hold, which mixture to aim at. */
export const tableKinds = ['spark', 'boost', 'lambda'] as const;
export type TableKind = (typeof tableKinds)[number];

/** Units that the cells of a kind are written in, most usual first. */
export const unitsOfTable = {
  spark: ['deg'],
  boost: ['bar', 'kPa', 'psi'],
  lambda: ['lambda', 'AFR'],
} as const satisfies { readonly [K in TableKind]: readonly string[] };

export const tableUnits = ['deg', 'bar', 'kPa', 'psi', 'lambda', 'AFR'] as const;
export type TableUnit = (typeof tableUnits)[number];

/** What the cells are: `isAbsolute` for boost that is written as manifold pressure. */
export type CellMeaning = {
  readonly kind: TableKind;
  readonly unit: TableUnit;
  readonly isAbsolute: boolean;
};

/** How a cell is shown outside its table. */
export const shownKindOf: { readonly [K in TableKind]: ShownKind } = {
  spark: 'angle',
  boost: 'boost',
  lambda: 'lambda',
};

/** A cell in SI; boost as gauge. */
export function cellInSi(value: number, of: CellMeaning, ambientPressure: number): number {
  const si = toSi(value, of.unit);
  return of.kind === 'boost' && of.isAbsolute ? si - ambientPressure : si;
}

/** An SI value as a cell of the table is written. */
export function cellFromSi(value: number, of: CellMeaning, ambientPressure: number): number {
  return fromSi(of.kind === 'boost' && of.isAbsolute ? value + ambientPressure : value, of.unit);
}

const titleWords: { readonly [K in TableKind]: RegExp } = {
  spark: /spark|ignition|timing|advance|zünd|vorz/i,
  boost: /boost|manifold target|pressure target|ladedruck|druckziel/i,
  lambda: /lambda|air.?fuel|\bafr\b|mixture|gemisch/i,
};

/**
 * What a table most likely is: by a word above it, else by the size of its numbers; null where two kinds would fit, so
 * that a person decides. Ranges: common practice.
 */
export function guessMeaning(values: readonly (readonly number[])[], title: string): CellMeaning | null {
  const all = values.flat();
  const lowest = all.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const highest = all.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const lambda = (): CellMeaning | null =>
    lowest >= 0.5 && highest <= 1.6
      ? { kind: 'lambda', unit: 'lambda', isAbsolute: false }
      : lowest >= 7.4 && highest <= 23
        ? { kind: 'lambda', unit: 'AFR', isAbsolute: false }
        : null;
  const boost = (): CellMeaning => {
    const unit = highest <= 5 ? 'bar' : highest <= 60 ? 'psi' : 'kPa';
    // A target never lies below the air around: numbers that all start near it are manifold pressure.
    return { kind: 'boost', unit, isAbsolute: unit === 'kPa' && lowest >= 80 };
  };
  const spark: CellMeaning = { kind: 'spark', unit: 'deg', isAbsolute: false };
  const named = tableKinds.filter((kind) => titleWords[kind].test(title));
  if (named.length === 1)
    return named[0] === 'spark' ? spark : named[0] === 'boost' ? boost() : (lambda() ?? null);
  // Bar of boost starts at nothing; a mixture never does.
  if (lowest >= 0.6 && highest <= 1.4) return lambda();
  if (highest > 60) return boost();
  if (highest > 23 && highest <= 60 && lowest > -30) return spark;
  return null;
}
