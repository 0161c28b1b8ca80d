import type { Verdict } from '../../compare/index.ts';
import { declaredChange, type Entry } from '../../session/index.ts';
import { convert, type ShownKind, toSi } from '../../units/index.ts';
import {
  entryTitle,
  type HandoverPhrases,
  handoverPhrases,
  type Show,
  screenWords,
  verdictSentence,
} from '../../words/index.ts';
import type { HandoverFacts, HandoverSource } from '../facts/index.ts';
import type { Fact } from './handover-document.ts';

/** What every section of the sheet is told with: the numbers, the words, and how numbers become words. */
export type Teller = {
  readonly facts: HandoverFacts;
  readonly source: HandoverSource;
  readonly show: Show;
  readonly words: HandoverPhrases;
  /** Words for choices of the setup sheet. */
  readonly options: ReturnType<typeof screenWords>['sheet']['options'];
  /** A number of the facts as the customer reads it; null where it is unknown. */
  readonly value: (value: number | null, unit: string, kind: ShownKind, digits?: number) => string | null;
  readonly volume: (litres: number | null) => string | null;
  readonly smallVolume: (millilitres: number | null) => string | null;
  readonly distance: (km: number) => string;
  /** Kilometres in the unit that the customer reads distances in. */
  readonly distanceUnit_km: number;
  /** A fact, or that nobody noted it. */
  readonly fact: (label: string, value: string | null) => Fact;
  readonly titleOf: (entryNumber: number) => string;
  readonly sentenceOf: (verdict: Verdict, entry: Entry) => string;
};

/** A hundredth of lambda; a gauge on the petrol scale reads tenths. */
export function mixtureDigits(show: Show): number {
  return show.units.gaugeScale === null ? 2 : 1;
}

/** Ties the numbers of a summary to the words and units of whoever reads it. */
export function createTeller(facts: HandoverFacts, source: HandoverSource, show: Show): Teller {
  const words = handoverPhrases(show.language);
  const distanceUnit = show.units.speed === 'mph' ? 'mi' : 'km';
  return {
    facts,
    source,
    show,
    words,
    options: screenWords(show.language).sheet.options,
    value: (value, unit, kind, digits) =>
      value === null ? null : show.quantity(toSi(value, unit), kind, digits),
    volume: (litres) => (litres === null ? null : show.quantity(litres * 1e-3, 'tankVolume')),
    smallVolume: (mL) =>
      mL === null ? null : show.quantity(mL * 1e-6, 'smallVolume', show.units.smallVolume === 'mL' ? 1 : 2),
    distance: (km) => {
      const value = convert(km, 'km', distanceUnit);
      // Two figures: no tank is known better.
      return `${show.number(Number(value.toPrecision(2)))}\u00a0${distanceUnit}`;
    },
    distanceUnit_km: convert(1, distanceUnit, 'km'),
    fact: (label, value) =>
      value === null ? { label, value: words.unknown, isUnknown: true } : { label, value },
    titleOf: (number) => {
      const entry = source.session.ledger[number];
      return entry ? entryTitle(entry, show) : '';
    },
    sentenceOf: (verdict, entry) =>
      verdictSentence(verdict, declaredChange(entry), show)
        .map((part) => part.text)
        .join(''),
  };
}
