import type { Entry, EntryKind } from '../session/index.ts';
import { kindOf, type ShownKind, siOf, type TypedValue, unitOf } from '../units/index.ts';
import { changePlace } from './change-place.ts';
import { typedDecimals } from './read-number.ts';
import type { Language, Show } from './show.ts';

type TitleWords = {
  readonly kinds: { readonly [K in EntryKind]: string };
  readonly mixtureScale: (isAirFuel: boolean) => string;
  readonly sprayOn: string;
  readonly sprayFrom: (to: string) => string;
  readonly sprayStart: (from: string, to: string) => string;
  readonly fromTo: (what: string, from: string, to: string) => string;
  readonly to: (what: string, to: string) => string;
};

const words: Record<Language, TitleWords> = {
  en: {
    kinds: {
      baseline: 'Baseline',
      spray: 'Spray',
      boost: 'Boost',
      spark: 'Spark',
      mixture: 'Mixture',
      fluid: 'Fluid',
      other: 'Other change',
      nothing: 'Driven again',
    },
    mixtureScale: (isAirFuel) => (isAirFuel ? 'Air/fuel' : 'Lambda'),
    sprayOn: 'Spray on',
    sprayFrom: (to) => `Spray on from ${to}`,
    sprayStart: (from, to) => `Spray start ${from} to ${to}`,
    fromTo: (what, from, to) => `${what} ${from} to ${to}`,
    to: (what, to) => `${what} ${to}`,
  },
  de: {
    kinds: {
      baseline: 'Ausgangsstand',
      spray: 'Einspritzung',
      boost: 'Ladedruck',
      spark: 'Zündung',
      mixture: 'Gemisch',
      fluid: 'Fluid',
      other: 'Andere Änderung',
      nothing: 'Noch einmal gefahren',
    },
    mixtureScale: (isAirFuel) => (isAirFuel ? 'Luft/Kraftstoff' : 'Lambda'),
    sprayOn: 'Einspritzung an',
    sprayFrom: (to) => `Einspritzung an ab ${to}`,
    sprayStart: (from, to) => `Einspritzbeginn ${from} auf ${to}`,
    fromTo: (what, from, to) => `${what} ${from} auf ${to}`,
    to: (what, to) => `${what} ${to}`,
  },
};

/** The kind of quantity that a change of this kind is stated in, null where it is stated in words alone. */
export function quantityOfChange(kind: EntryKind): ShownKind | null {
  switch (kind) {
    case 'boost':
    case 'spray':
      return 'boost';
    case 'spark':
      return 'angle';
    case 'mixture':
      return 'lambda';
    case 'fluid':
      return 'share';
    default:
      return null;
  }
}

/** The word for a kind of entry, `Boost`. */
export function entryKindWord(kind: EntryKind, show: Show): string {
  return words[show.language].kinds[kind];
}

/** A number of the wrong kind (a hand-edited file) is shown in the unit it was written in. */
function shown(typed: TypedValue, kind: ShownKind | null, show: Show, part: 'bare' | 'full'): string {
  const unit = unitOf(typed.unit);
  // The quantity's name stands in front, so its sign need not follow.
  if (kind === 'lambda' && unit.kind === 'lambda') {
    const digits = show.units.gaugeScale === null ? Math.max(2, typedDecimals(typed.value)) : 1;
    return show.bare(siOf(typed), 'lambda', digits);
  }
  if (kind === null || kindOf(kind) !== unit.kind) {
    return `${show.number(typed.value, 2)}\u00a0${unit.symbol}`.trim();
  }
  return part === 'bare' ? show.bare(siOf(typed), kind) : show.quantity(siOf(typed), kind);
}

/**
 * What an entry is called: its own title, or one made from kind and change in the reader's language and units,
 * `Boost 1.15 to 1.30 bar`. A spark change without a `from` is a step and carries its sign.
 */
export function entryTitle(entry: Pick<Entry, 'kind' | 'title' | 'change'>, show: Show): string {
  if (entry.title !== '') return entry.title;
  const said = words[show.language];
  const from = entry.change?.from ?? null;
  const to = entry.change?.to ?? null;
  const where = entry.change?.where ? ` ${changePlace(entry.change.where, show)}` : '';
  const kind = quantityOfChange(entry.kind);
  const name = kind === 'lambda' ? said.mixtureScale(show.units.gaugeScale !== null) : said.kinds[entry.kind];
  if (to === null) return `${entry.kind === 'spray' ? said.sprayOn : said.kinds[entry.kind]}${where}`;
  const target = shown(to, kind, show, 'full');
  if (entry.kind === 'spray') {
    const title = from ? said.sprayStart(shown(from, kind, show, 'bare'), target) : said.sprayFrom(target);
    return `${title}${where}`;
  }
  if (from) return `${said.fromTo(name, shown(from, kind, show, 'bare'), target)}${where}`;
  const isStep = entry.kind === 'spark' && unitOf(to.unit).kind === 'angle';
  return `${said.to(name, isStep ? show.difference(siOf(to), 'angle') : target)}${where}`;
}
