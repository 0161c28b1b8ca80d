import type { Note } from '../../result/index.ts';
import { kindOf, units } from '../../units/index.ts';
import { forwardShare } from '../forward-share.ts';
import { type QuantityId, quantities } from '../quantity.ts';
import type { Spread } from '../spread.ts';
import { type ColumnMapping, measures } from './column-mapping.ts';
import { headerParts } from './header-unit.ts';
import { canBeHeading } from './heading-column.ts';
import { conceptsOf, matchName, type NameMatch } from './name-match.ts';
import { plausibleUnit, type UnitSystem } from './plausible-unit.ts';
import { pressureReference } from './pressure-reference.ts';
import { type FoundUnit, isRateUnit, parseUnit } from './unit-words.ts';

/** A column as the file has it, with the size of its numbers. */
export type RawColumn = {
  readonly name: string;
  /** From a units row, '' where there is none. */
  readonly unitRow: string;
  /** Glued to the numbers, '' where there is none. */
  readonly gluedUnit: string;
  readonly values: Float64Array;
  readonly spread: Spread;
};

/** What a column means. `unit` is an id of core/units where `quantity` is set, else the file's own text. */
export type ColumnMeaning = {
  readonly quantity: QuantityId | 'sample' | 'date' | null;
  readonly unit: string;
  readonly confidence: number;
  readonly reason: Note;
};

type Stated = { readonly name: string; readonly text: string; readonly unit: FoundUnit | null };

/** A time may start anew now and then, but it runs on (common practice). */
const mostlyForward = 0.8;
/** One whose name says nothing but its unit, as in Spridartid (ms), has to run on all but without a turn. */
const nearlyAllForward = 0.98;

/** Sureness of a stated unit that fits a number's name against one that had to be told from values. */
const unitAlone = 0.5;

/**
 * What each column holds: words first, the stated unit second, the size of the values third. Corrections by
 * hand win over all.
 *
 * @param columns  in the file's order
 * @param mapping  corrections by hand, already checked against the units
 */
export function recogniseColumns(
  columns: readonly RawColumn[],
  mapping: readonly ColumnMapping[] = [],
): readonly ColumnMeaning[] {
  const byHand = new Map(mapping.map((m) => [m.column, m]));
  const stated = columns.map(statedUnit);
  const system = unitSystem(stated);
  const first = columns.map((column, i): ColumnMeaning => {
    const hand = byHand.get(column.name);
    if (hand)
      return {
        quantity: hand.quantity,
        unit: hand.unit,
        confidence: 1,
        reason: { code: hand.isFromProfile ? 'log/column-by-profile' : 'log/column-by-hand', facts: {} },
      };
    return meaningOf(column, stated[i] ?? { name: column.name, text: '', unit: null }, system);
  });
  const isTurning = columns.some((column, i) => first[i]?.quantity === 'engineSpeed' && isMoving(column));
  return first.map((meaning, i) => {
    const column = columns[i];
    if (!column || byHand.has(column.name)) return meaning;
    if (isTurning && standsStill(meaning, column))
      return { ...unknownColumn(meaning.unit), reason: { code: 'log/column-stands-still', facts: {} } };
    const isAngle = stated[i]?.unit?.unit === 'deg' || stated[i]?.unit?.unit === 'rad';
    if (meaning.quantity === 'heading' && !isAngle && !canBeHeading(column, first))
      return unknownColumn(meaning.unit);
    return pressureReference(meaning, column, stated[i]?.unit?.reference ?? null, columns, first);
  });
}

/** What cannot keep one value while the engine turns up and down, unless its sensor is dead or not fitted. */
const neverStill: ReadonlySet<string> = new Set([
  'vehicleSpeed',
  'gpsSpeed',
  'pedal',
  'throttle',
  'manifoldPressure',
  'boost',
  'airMassFlow',
]);

function isMoving({ spread }: RawColumn): boolean {
  return spread.high > 1.2 * spread.low;
}

/** A pedal that is down throughout is no dead one: some logs hold a pull and nothing else. */
function standsStill(meaning: ColumnMeaning, { spread }: RawColumn): boolean {
  if (!neverStill.has(meaning.quantity ?? '') || spread.count < 20 || spread.min !== spread.max) return false;
  const isOpen = isOpening(meaning.quantity) && spread.max > 0.6 * fullOf(meaning.unit);
  return !isOpen;
}

function fullOf(unit: string): number {
  return unit === '1' ? 1 : unit === 'V' ? 5 : unit === 'mV' ? 5000 : unit === 'deg' ? 90 : 100;
}

/** Units that also say where the power was measured: at the wheel. */
const wheelUnit = /^(?:whp|rwhp|wps|wkw)$/i;

function statedUnit(column: RawColumn): Stated {
  const parts = headerParts(column.name);
  const told = (text: string, unit: Stated['unit']): Stated => {
    const isAtWheel = wheelUnit.test(text) && text !== parts.name;
    // A unit that we do not know may still say that air is counted by volume or by stroke.
    const isBulk = unit === null && conceptsOf(text).has('bulk');
    const name = isAtWheel ? `${parts.name} wheel` : isBulk ? `${parts.name} ${text}` : parts.name;
    return { name, text, unit };
  };
  for (const text of [column.unitRow, column.gluedUnit]) {
    const unit = text === '' ? null : parseUnit(text);
    if (unit && unit.unit !== '') return told(text, unit);
  }
  // `Vitesse GPS` says where the speed comes from; grams per second belong to a flow.
  if (/^gps$/i.test(parts.unitText) && !isFlow(parts.name))
    return { name: column.name, text: '', unit: null };
  // `n` alone is a speed: nothing that is logged is measured in newtons.
  if (parts.unitText === parts.name && !measuresAny(parts.unit))
    return { name: column.name, text: '', unit: null };
  return told(parts.unitText || column.unitRow || column.gluedUnit, parts.unit);
}

const loggedKinds: ReadonlySet<string> = new Set(Object.values(quantities).map(kindOf));

function measuresAny(unit: FoundUnit | null): boolean {
  return unit !== null && loggedKinds.has(units.get(unit.unit)?.kind ?? '');
}

/** `Air (°C)`, `Fuel (bar)`: the unit says what the name leaves out. */
function byUnitToo({ name, unit }: Stated): readonly NameMatch[] {
  const kind = unit && units.get(unit.unit)?.kind;
  const left = kind === 'temperature' ? 'temperature' : kind === 'pressure' ? 'pressure' : null;
  if (left === null) return [];
  const matches = matchName(`${name} ${left}`);
  return matches.map((m) => ({ ...m, word: m.word.replace(left, '').trim() }));
}

function isFlow(name: string): boolean {
  return matchName(name).some(
    ({ quantity }) => quantity !== 'sample' && quantity !== 'date' && measures('g/s', quantity),
  );
}

function unitSystem(stated: readonly Stated[]): UnitSystem {
  const imperial = new Set(['mph', 'psi', 'F', 'lb ft', 'hp', 'inHg', 'lb/min', 'lb/h', 'ft', 'mi']);
  const metric = new Set(['km/h', 'kPa', 'bar', 'mbar', 'C', 'Nm', 'kW', 'hPa', 'm/s']);
  let score = 0;
  for (const { unit } of stated)
    if (unit) score += imperial.has(unit.unit) ? 1 : metric.has(unit.unit) ? -1 : 0;
  return score > 0 ? 'imperial' : score < 0 ? 'metric' : null;
}

function unknownColumn(text: string): ColumnMeaning {
  return { quantity: null, unit: text, confidence: 0, reason: { code: 'log/column-unknown', facts: {} } };
}

/** `Pedal (%/s)`, `RPM/s`: how fast it changes is another quantity. */
function isRate(column: RawColumn): boolean {
  const bracket = /[[({]([^[\](){}]{1,30})[\])}]\s*$/.exec(column.name);
  const last = /[^\s_,;]+$/.exec(column.name)?.[0] ?? '';
  return [bracket?.[1] ?? column.name, last, column.unitRow, column.gluedUnit].some(
    (t) => t !== '' && isRateUnit(t),
  );
}

function meaningOf(column: RawColumn, stated: Stated, system: UnitSystem): ColumnMeaning {
  if (isRate(column)) return unknownColumn(stated.text);
  const isStated = stated.unit !== null && stated.unit.unit !== '' && stated.unit.unit !== '1';
  // `Engine RPM`: the unit is half of the name.
  const byName = matchName(stated.name);
  for (const match of [...(byName.length > 0 ? byName : matchName(column.name)), ...byUnitToo(stated)]) {
    const { quantity, trust, word } = match;
    const fewest = byName.length > 0 ? mostlyForward : nearlyAllForward;
    // Time is told by its steps, not by its size: what runs backwards is the Tempo of a German or the like.
    if (quantity === 'time' && forwardShare(column.values) < fewest) continue;
    if (quantity === 'sample' || quantity === 'date')
      return {
        quantity,
        unit: '',
        confidence: trust,
        reason: { code: 'log/column-by-name', facts: { word } },
      };
    // A flag is on or off, or counts a few states: 6,600 is the limit itself.
    if (isFlag(quantity) && column.spread.high > mostStates) continue;
    if (isStated && stated.unit) {
      const unit = unitFor(quantity, stated.unit.unit, column.spread);
      if (unit !== null)
        return {
          quantity,
          unit,
          confidence: Math.min(0.99, trust + 0.02),
          reason: { code: 'log/column-by-name-unit', facts: { word, unit } },
        };
      continue;
    }
    if (quantity === 'time')
      return {
        quantity,
        unit: '',
        confidence: trust,
        reason: { code: 'log/column-by-name', facts: { word } },
      };
    if (column.spread.count === 0) return unknownColumn(stated.text);
    const guessed = plausibleUnit(quantity, column.spread, system);
    if (!guessed) continue;
    const { low, high } = column.spread;
    const isNumber = kindOf(quantities[quantity]) === 'number';
    return {
      quantity,
      unit: guessed.unit,
      confidence: trust * guessed.sureness,
      reason: isNumber
        ? { code: 'log/column-by-name', facts: { word } }
        : { code: 'log/column-by-values', facts: { word, unit: guessed.unit, low, high } },
    };
  }
  if (
    stated.unit &&
    (stated.unit.unit === 'rpm' || stated.unit.unit === 'km/h' || stated.unit.unit === 'mph')
  ) {
    const isTold = matchName(stated.name).length === 0 && /^[a-z]{0,3}$/i.test(stated.name);
    if (isTold)
      return {
        quantity: stated.unit.unit === 'rpm' ? 'engineSpeed' : 'vehicleSpeed',
        unit: stated.unit.unit,
        confidence: unitAlone,
        reason: { code: 'log/column-by-name-unit', facts: { word: stated.name, unit: stated.unit.unit } },
      };
  }
  return unknownColumn(stated.text);
}

/** The stated unit as one that measures the quantity, or null where it cannot. */
function unitFor(quantity: QuantityId, unit: string, spread: Spread): string | null {
  if (kindOf(quantities[quantity]) === 'number') return '';
  if (measures(unit, quantity)) {
    // A gauge's scale in the header, lambda in the numbers, or the other way round: the numbers are right.
    if (unit === 'AFR' && spread.middle < 3) return 'lambda';
    if (unit === 'lambda' && spread.middle > 5) return 'AFR';
    // `RPM`, whose name is its unit, over turns in a second or in thousands a minute.
    if (unit === 'rpm') return plausibleUnit(quantity, spread, null)?.unit ?? null;
    // Percent in the header, a share in the numbers: an opening of 1 % never makes a pull.
    if (unit === '%' && isOpening(quantity) && spread.max > 0.3 && spread.max <= 1.02 && spread.count > 20)
      return '1';
    return unit;
  }
  return null;
}

const mostStates = 255;

function isFlag(quantity: QuantityId): boolean {
  return quantity === 'limiterActive' || quantity === 'tractionControl';
}

function isOpening(quantity: ColumnMeaning['quantity']): boolean {
  return quantity === 'throttle' || quantity === 'pedal';
}
