import type { ChangeDeclaration, Verdict, VerdictKind } from '../compare/index.ts';
import { verdictPhrases as de } from './de/verdict-phrases.ts';
import { verdictPhrases as en, type VerdictPhrases } from './en/verdict-phrases.ts';
import { halfAround } from './half-around.ts';
import { typedDecimals } from './read-number.ts';
import { noteText } from './sentences.ts';
import type { Language, Show } from './show.ts';

/** A stretch of a sentence; the one with a tone is the verdict itself and is set in its colour. */
export type VerdictPart = { readonly text: string; readonly tone?: VerdictKind };

/** What the sentence needs of a verdict: a whole one, one off the wire, or a ledger's without its curve. */
export type SpokenVerdict = Pick<
  Verdict,
  'kind' | 'effect' | 'interval95' | 'morePulls' | 'reasons' | 'pullsBefore' | 'pullsAfter' | 'margin'
> & {
  readonly curve?: {
    readonly engineSpeed_rad_s: ArrayLike<number | null>;
    readonly proven: readonly { readonly from: number; readonly to: number; readonly sign: 1 | -1 }[];
  } | null;
};

const phrases: Record<Language, VerdictPhrases> = { en, de };

/**
 * The verdict as one sentence that a customer understands: "Boost from 1.15 to 1.30 bar gained 10.9 kW, give or
 * take 1.4, from 3,650 rpm up." Where nothing could be compared the first reason follows.
 */
export function verdictSentence(
  verdict: SpokenVerdict,
  change: ChangeDeclaration | null,
  show: Show,
): VerdictPart[] {
  const say = phrases[show.language];
  const subject = subjectOf(change, show, say);
  const { effect, interval95, kind } = verdict;
  const half = interval95 && effect !== null ? show.bare(halfAround(effect, interval95), 'power') : null;
  const part = (text: string): VerdictPart => ({ text });
  const tone = (text: string): VerdictPart => ({ text, tone: kind });
  if (kind === 'not-comparable') {
    const [reason] = verdict.reasons;
    return [part(`${subject} `), tone(say.notComparable), part(reason ? `. ${noteText(reason, show)}` : '.')];
  }
  if (kind === 'undecided') {
    const so = effect !== null && half !== null ? say.soFar(show.difference(effect, 'power'), half) : '';
    const more = verdict.morePulls === null ? say.noNumberOfPulls : say.morePulls(verdict.morePulls);
    return [part(say.undecidedBefore(subject)), tone(say.undecided), part(`${so}. ${more}`)];
  }
  if (kind === 'equivalent') {
    const rest =
      effect !== null && half !== null
        ? say.within(show.difference(effect, 'power'), half, show.quantity(verdict.margin, 'share'))
        : '';
    return [part(`${subject} `), tone(say.equivalent), part(`${rest}.`)];
  }
  const size = show.quantity(Math.abs(effect ?? 0), 'power');
  const where = provenWords(verdict, kind === 'gain' ? 1 : -1, show, say);
  return [
    part(`${subject} `),
    tone(kind === 'gain' ? say.gained(size) : say.lost(size)),
    part(`${half === null ? '' : say.giveOrTake(half)}${where === null ? '' : `, ${where}`}.`),
  ];
}

function subjectOf(change: ChangeDeclaration | null, show: Show, say: VerdictPhrases): string {
  if (!change) return say.subjects.unknown;
  const { kind, from, to, size } = change;
  const shown = { boost: 'boost', spark: 'angle', mixture: 'lambda' } as const;
  if (kind !== 'boost' && kind !== 'spark' && kind !== 'mixture') return say.subjects[kind];
  const unit = shown[kind];
  const isGauge = kind === 'mixture' && show.units.gaugeScale !== null;
  const name = say.subjects[isGauge ? 'airFuel' : kind];
  // "Lambda from 0.85 to 0.82" names its unit already, and so does the ratio of a gauge.
  const isNamed = unit === 'lambda';
  const digits = kind === 'mixture' ? mixtureDigits([from, to], show) : undefined;
  const bare = (value: number) => show.bare(value, unit, digits);
  const last = (value: number) => (isNamed ? bare(value) : show.quantity(value, unit, digits));
  if (from !== null && to !== null) return say.fromTo(name, bare(from), last(to));
  if (size !== null) return `${name} ${show.difference(size, unit)}`;
  return to === null ? name : `${name} ${last(to)}`;
}

/** As the entry's own title has it: hundredths, thousandths where one was typed; a gauge reads tenths. */
function mixtureDigits(values: readonly (number | null)[], show: Show): number {
  if (show.units.gaugeScale !== null) return 1;
  return Math.max(2, ...values.map((v) => (v === null ? 0 : typedDecimals(Number(v.toFixed(3))))));
}

/** Where along engine speed the whole-curve band proves it; null where it does so nowhere. */
function provenWords(verdict: SpokenVerdict, sign: 1 | -1, show: Show, say: VerdictPhrases): string | null {
  const curve = verdict.curve;
  const ranges = curve?.proven.filter((r) => r.sign === sign) ?? [];
  const first = ranges[0];
  const last = ranges[ranges.length - 1];
  if (!curve || !first || !last) return null;
  const speed = curve.engineSpeed_rad_s;
  const edge = Math.max(1, Math.round(speed.length * 0.02));
  const isFromStart = first.from <= edge;
  const isToEnd = last.to >= speed.length - edge;
  const at = (k: number) => show.quantity(rounded(speed[k] ?? 0), 'engineSpeed');
  if (isFromStart && isToEnd) return ranges.length === 1 ? say.allOver : null;
  if (isToEnd) return say.fromUp(at(first.from));
  if (isFromStart) return say.upTo(at(last.to - 1));
  return say.between(show.bare(rounded(speed[first.from] ?? 0), 'engineSpeed'), at(last.to - 1));
}

/** To 50 rpm: the grid's own spacing, and all that a band can claim. */
function rounded(speed: number): number {
  const step = (50 * Math.PI) / 30;
  return Math.round(speed / step) * step;
}
