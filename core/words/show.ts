import type { QuantityId } from '../log/index.ts';
import { quantities } from '../log/index.ts';
import { chosenUnit, fromSi, type ShownKind, type UnitChoice } from '../units/index.ts';

export const languages = ['en', 'de'] as const;
export type Language = (typeof languages)[number];

/** Turns SI numbers into text in the reader's language and units. Signs are real minus signs. */
export type Show = {
  readonly language: Language;
  readonly units: UnitChoice;
  /** A plain number with fixed digits. */
  number(value: number, digits?: number): string;
  /** As number, with a plus sign where positive. */
  signed(value: number, digits?: number): string;
  /** An SI value with its unit, `0.40 bar`. A difference of temperatures is its own kind. */
  quantity(value: number, kind: ShownKind, digits?: number): string;
  /** The same with a sign: an effect. */
  difference(value: number, kind: ShownKind, digits?: number): string;
  /** A level with half its interval, `152.3 ± 0.6 kW`. */
  withHalf(value: number, half: number, kind: ShownKind, digits?: number): string;
  /** An effect with half its interval, `+10.9 ± 1.4 kW`. */
  differenceWithHalf(value: number, half: number, kind: ShownKind, digits?: number): string;
  /** The number alone, in the chosen unit. */
  bare(value: number, kind: ShownKind, digits?: number): string;
  unit(kind: ShownKind): string;
  channel(value: number, quantity: QuantityId, digits?: number): string;
  date(iso: string): string;
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
  '%': 1,
  s: 2,
  L: 1,
  mL: 0,
  V: 1,
};

const locales: Record<Language, string> = { en: 'en-GB', de: 'de-DE' };

export function createShow(language: Language, units: UnitChoice): Show {
  const formats = new Map<string, Intl.NumberFormat>();
  const format = (value: number, digits: number, sign: boolean): string => {
    const key = `${digits}${sign}`;
    let f = formats.get(key);
    if (!f) {
      f = new Intl.NumberFormat(locales[language], {
        minimumFractionDigits: digits,
        maximumFractionDigits: digits,
        signDisplay: sign ? 'exceptZero' : 'negative',
      });
      formats.set(key, f);
    }
    return f.format(value).replace('-', '−');
  };
  const digitsOf = (unit: string, digits: number | undefined) => digits ?? usualDigits[unit] ?? 2;
  const isGauge = (kind: ShownKind) => kind === 'lambda' && units.gaugeScale !== null;
  const bareUnit = (kind: ShownKind) => (isGauge(kind) ? 'AFR' : chosenUnit(units, kind).symbol);
  const bare = (value: number, kind: ShownKind, digits: number | undefined, sign: boolean) => {
    if (isGauge(kind)) return format(value * (units.gaugeScale ?? 1), digits ?? 2, sign);
    const unit = chosenUnit(units, kind);
    return format(fromSi(value, unit.id), digitsOf(unit.id, digits), sign);
  };
  /** Differences of affine units lose their offset. */
  const differenceKind = (kind: ShownKind): ShownKind =>
    kind === 'temperature' ? 'temperatureDifference' : kind;
  const join = (text: string, kind: ShownKind) => {
    const symbol = bareUnit(kind);
    if (symbol === '') return text;
    return symbol === '°' ? `${text}°` : `${text}\u00a0${symbol}`;
  };
  const withHalf = (
    value: number,
    half: number,
    kind: ShownKind,
    digits: number | undefined,
    sign: boolean,
  ) => join(`${bare(value, kind, digits, sign)} ± ${bare(half, differenceKind(kind), digits, false)}`, kind);
  return {
    language,
    units,
    number: (value, digits = 0) => format(value, digits, false),
    signed: (value, digits = 0) => format(value, digits, true),
    quantity: (value, kind, digits) => join(bare(value, kind, digits, false), kind),
    difference: (value, kind, digits) =>
      join(bare(value, differenceKind(kind), digits, true), differenceKind(kind)),
    withHalf: (value, half, kind, digits) => withHalf(value, half, kind, digits, false),
    differenceWithHalf: (value, half, kind, digits) =>
      withHalf(value, half, differenceKind(kind), digits, true),
    bare: (value, kind, digits) => bare(value, kind, digits, false),
    unit: bareUnit,
    channel: (value, quantity, digits) => {
      const kind = quantities[quantity];
      return join(bare(value, kind, digits, false), kind);
    },
    date: (iso) =>
      new Intl.DateTimeFormat(locales[language], { dateStyle: 'long', timeZone: 'UTC' }).format(
        Date.parse(iso),
      ),
  };
}
