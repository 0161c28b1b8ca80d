import type { QuantityId } from '../log/index.ts';
import { quantities } from '../log/index.ts';
import { chosenUnit, fromSi, referenceOf, type ShownKind, type UnitChoice, unitOf } from '../units/index.ts';

export const languages = ['en', 'de'] as const;
export type Language = (typeof languages)[number];

/** Turns SI numbers into text in the reader's language and units. Signs are real minus signs. */
export type Show = {
  readonly language: Language;
  readonly units: UnitChoice;
  /** A plain number with fixed digits. */
  number(value: number, digits?: number): string;
  /** As number, without a sign between thousands: for a head or a field. */
  plain(value: number, digits?: number): string;
  /**
   * A number of which nobody knows what it measures: four digits that tell, `95.20`, `0.01230`, whole numbers
   * whole; past a million or below a hundred-thousandth with its power of ten, `1.980E14`.
   */
  reading(value: number): string;
  /** As number, with a plus sign where positive. */
  signed(value: number, digits?: number): string;
  /**
   * An SI value with its unit, `12.3 kW`; a pressure says what it counts from, `0.40 bar g`, `182.0 kPa abs`.
   */
  quantity(value: number, kind: ShownKind, digits?: number): string;
  /** The same with a sign: an effect. */
  difference(value: number, kind: ShownKind, digits?: number): string;
  /** The size of a difference or of a step, without a sign: `0.10 bar`, from no zero of its own. */
  span(value: number, kind: ShownKind, digits?: number): string;
  /** A level with half its interval, `152.3 ± 0.6 kW`. */
  withHalf(value: number, half: number, kind: ShownKind, digits?: number): string;
  /** An effect with half its interval, `+10.9 ± 1.4 kW`. */
  differenceWithHalf(value: number, half: number, kind: ShownKind, digits?: number): string;
  /** The number alone, in the chosen unit. */
  bare(value: number, kind: ShownKind, digits?: number): string;
  /** The chosen unit as it is printed; a ratio of air to fuel states its scale, `AFR (14.7)`. */
  unit(kind: ShownKind): string;
  /** Any unit as it is printed for a quantity, `psi g`. */
  symbol(unit: string, kind: ShownKind): string;
  channel(value: number, quantity: QuantityId, digits?: number): string;
  date(iso: string): string;
  /** A day with its time, by universal time, which it says; what is no time stands as it is. */
  moment(iso: string): string;
};

/** Decimals that fit the size of a unit: what a reader can use, not what a double holds. */
const usualDigits: Partial<Record<string, number>> = {
  bar: 2,
  kPa: 1,
  psi: 1,
  C: 1,
  F: 1,
  K: 1,
  dK: 1,
  dC: 1,
  dF: 1,
  kW: 1,
  hp: 1,
  PS: 1,
  Nm: 0,
  'lb ft': 0,
  rpm: 0,
  'km/h': 0,
  mph: 0,
  kg: 0,
  lb: 0,
  deg: 1,
  lambda: 3,
  'mL/min': 0,
  'g/s': 1,
  'g/min': 0,
  'kg/h': 0,
  'lb/min': 1,
  'lb/h': 0,
  '%': 1,
  s: 2,
  L: 1,
  mL: 0,
  V: 1,
};

/** Of a value whose unit nobody knows: more than a plot shows, fewer than jitter while a line moves (common practice). */
const readingDigits = 4;

/** What a pressure counts from, behind its unit. */
const references: Record<Language, Record<'absolute' | 'gauge', string>> = {
  en: { absolute: 'abs', gauge: 'g' },
  de: { absolute: 'abs', gauge: 'rel' },
};

/** Units whose sign is another word in a language. */
const ownSymbols: Record<Language, Partial<Record<string, string>>> = { en: {}, de: { rpm: '1/min' } };

export const locales: Record<Language, string> = { en: 'en-GB', de: 'de-DE' };

const decimalsOf = (value: number) => Math.min(2, String(value).split('.')[1]?.length ?? 0);

export function createShow(language: Language, units: UnitChoice): Show {
  const formats = new Map<string, Intl.NumberFormat>();
  const format = (value: number, digits: number, sign: boolean, isGrouped = true): string => {
    const key = `${digits}${sign}${isGrouped}`;
    let f = formats.get(key);
    if (!f) {
      f = new Intl.NumberFormat(locales[language], {
        minimumFractionDigits: digits,
        maximumFractionDigits: digits,
        useGrouping: isGrouped,
        signDisplay: sign ? 'exceptZero' : 'negative',
      });
      formats.set(key, f);
    }
    return f.format(value).replace('-', '−');
  };
  const asPower = new Intl.NumberFormat(locales[language], {
    notation: 'scientific',
    minimumFractionDigits: readingDigits - 1,
    maximumFractionDigits: readingDigits - 1,
  });
  const digitsOf = (unit: string, digits: number | undefined) => digits ?? usualDigits[unit] ?? 2;
  const isGauge = (kind: ShownKind) => kind === 'lambda' && units.gaugeScale !== null;
  const symbol = (unit: string, kind: ShownKind) => {
    const reference = referenceOf(kind);
    const plain = ownSymbols[language][unit] ?? unitOf(unit).symbol;
    return reference === null ? plain : `${plain}\u00a0${references[language][reference]}`;
  };
  const bare = (value: number, kind: ShownKind, digits: number | undefined, sign: boolean) => {
    if (isGauge(kind)) return format(value * (units.gaugeScale ?? 1), digits ?? 2, sign);
    const unit = chosenUnit(units, kind);
    return format(fromSi(value, unit.id), digitsOf(unit.id, digits), sign);
  };
  /** Differences of affine units lose their offset. */
  const differenceKind = (kind: ShownKind): ShownKind =>
    kind === 'temperature' ? 'temperatureDifference' : kind;
  /** A difference has no zero to count from, and a ratio in a sentence needs no scale beside it. */
  const join = (text: string, kind: ShownKind, isDifference = false) => {
    const { id, symbol: plain } = chosenUnit(units, kind);
    const isSpan = isDifference && referenceOf(kind) !== null;
    const beside = isGauge(kind) ? 'AFR' : isSpan ? plain : symbol(id, kind);
    if (beside === '') return text;
    return beside === '°' ? `${text}°` : `${text}\u00a0${beside}`;
  };
  const spread = (value: number, half: number, kind: ShownKind, digits: number | undefined, sign: boolean) =>
    `${bare(value, kind, digits, sign)} ± ${bare(half, differenceKind(kind), digits, false)}`;
  return {
    language,
    units,
    number: (value, digits = 0) => format(value, digits, false),
    plain: (value, digits = 0) => format(value, digits, false, false),
    reading: (value) => {
      const size = Math.abs(value);
      if (size !== 0 && (size >= 1e6 || size < 1e-5)) return asPower.format(value).replace(/-/g, '−');
      if (Number.isInteger(value)) return format(value, 0, false);
      return format(value, Math.max(0, readingDigits - 1 - Math.floor(Math.log10(size))), false);
    },
    signed: (value, digits = 0) => format(value, digits, true),
    quantity: (value, kind, digits) => join(bare(value, kind, digits, false), kind),
    difference: (value, kind, digits) =>
      join(bare(value, differenceKind(kind), digits, true), differenceKind(kind), true),
    span: (value, kind, digits) =>
      join(bare(value, differenceKind(kind), digits, false), differenceKind(kind), true),
    withHalf: (value, half, kind, digits) => join(spread(value, half, kind, digits, false), kind),
    differenceWithHalf: (value, half, kind, digits) =>
      join(spread(value, half, differenceKind(kind), digits, true), differenceKind(kind), true),
    bare: (value, kind, digits) => bare(value, kind, digits, false),
    unit: (kind) =>
      isGauge(kind)
        ? `AFR (${format(units.gaugeScale ?? 1, decimalsOf(units.gaugeScale ?? 1), false)})`
        : symbol(units[kind], kind),
    symbol,
    channel: (value, quantity, digits) => {
      const kind = quantities[quantity];
      return join(bare(value, kind, digits, false), kind);
    },
    date: (iso) =>
      new Intl.DateTimeFormat(locales[language], { dateStyle: 'long', timeZone: 'UTC' }).format(
        Date.parse(iso),
      ),
    moment: (iso) => {
      const time = Date.parse(iso);
      if (Number.isNaN(time)) return iso;
      const options = { dateStyle: 'medium', timeStyle: 'short', timeZone: 'UTC' } as const;
      return `${new Intl.DateTimeFormat(locales[language], options).format(time)} UTC`;
    },
  };
}
