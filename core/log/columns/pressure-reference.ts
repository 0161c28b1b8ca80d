import { toSi, units } from '../../units/index.ts';
import { conceptsOf } from './name-match.ts';
import type { ColumnMeaning, RawColumn } from './recognise.ts';

/** Lowest absolute pressure that a running engine's manifold holds (common practice: 15 to 20 kPa on overrun). */
const lowestManifold = 8e3;
/** So many readings below that are no glitch (common practice). */
const fewestBelow = 5;
const belowShare = 0.002;
/** At full throttle a manifold is hardly below the air around it, 90 kPa up to some 1,000 m (common practice). */
const fullThrottleLowest = 85e3;

const asGauge = { manifoldPressure: 'boost', manifoldPressureTarget: 'boostTarget' } as const;
const asAbsolute = { boost: 'manifoldPressure', boostTarget: 'manifoldPressureTarget' } as const;

/**
 * Settles whether a manifold or boost column is absolute or above the air: by its unit (psig), its words, else
 * by its values. A column called boost that reads 30 kPa on overrun is absolute, one called MAP that goes below
 * zero is not.
 *
 * @param meaning   of this column by name and unit
 * @param all       every column, for a throttle to look at
 * @param meanings  of every column
 */
export function pressureReference(
  meaning: ColumnMeaning,
  column: RawColumn,
  reference: 'absolute' | 'gauge' | null,
  all: readonly RawColumn[],
  meanings: readonly ColumnMeaning[],
): ColumnMeaning {
  const { quantity } = meaning;
  const isManifold = quantity === 'manifoldPressure' || quantity === 'manifoldPressureTarget';
  const isBoost = quantity === 'boost' || quantity === 'boostTarget';
  if ((!isManifold && !isBoost) || !units.has(meaning.unit)) return meaning;
  const said = conceptsOf(column.name);
  const stated = reference ?? (said.has('gauge') ? 'gauge' : said.has('absolute') ? 'absolute' : null);
  const low = toSi(column.spread.low, meaning.unit);
  const high = toSi(column.spread.high, meaning.unit);
  const isBelow = isOftenBelow(column, meaning.unit);
  const found =
    stated ??
    (isBelow
      ? 'gauge'
      : isManifold
        ? 'absolute'
        : quantity === 'boostTarget'
          ? low > fullThrottleLowest
            ? 'absolute'
            : 'gauge'
          : absoluteBoost(column, meaning, all, meanings)
            ? 'absolute'
            : 'gauge');
  if ((found === 'absolute') === isManifold) return meaning;
  const turned = isManifold
    ? asGauge[quantity as keyof typeof asGauge]
    : asAbsolute[quantity as keyof typeof asAbsolute];
  return {
    quantity: turned,
    unit: meaning.unit,
    confidence: meaning.confidence * (stated ? 1 : 0.9),
    reason: stated
      ? meaning.reason
      : {
          code: 'log/column-gauge-by-values',
          facts: { word: column.name, low, high },
        },
  };
}

/** A dropped sensor, or a row of lowest values behind the data, writes a zero or two: that is no vacuum. */
function isOftenBelow(column: RawColumn, unit: string): boolean {
  if (!(toSi(column.spread.min, unit) < lowestManifold)) return false;
  if (toSi(column.spread.low, unit) < lowestManifold) return true;
  let below = 0;
  for (const v of column.values) if (toSi(v, unit) < lowestManifold) below++;
  return below >= Math.max(fewestBelow, belowShare * column.values.length);
}

/**
 * At full throttle gauge boost still has to build up from near nothing; absolute pressure does not. A tenth of
 * the samples may lag, as the manifold takes a moment to fill.
 */
function absoluteBoost(
  column: RawColumn,
  meaning: ColumnMeaning,
  all: readonly RawColumn[],
  meanings: readonly ColumnMeaning[],
): boolean {
  if (toSi(column.spread.high, meaning.unit) < 105e3) return false;
  const opening = all[meanings.findIndex((m) => m.quantity === 'pedal' || m.quantity === 'throttle')];
  if (!opening) return toSi(column.spread.low, meaning.unit) > fullThrottleLowest;
  const full = opening.spread.max * 0.95;
  const seen = column.values.filter((v, i) => !Number.isNaN(v) && (opening.values[i] ?? 0) >= full).sort();
  const tenth = seen[Math.floor(0.1 * seen.length)];
  return tenth !== undefined && toSi(tenth, meaning.unit) > fullThrottleLowest;
}
