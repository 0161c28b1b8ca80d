import type { VerdictKind } from '../compare/index.ts';
import type { Language, Show } from './show.ts';

/** A piece of a sentence; at most one piece carries a colour. */
export type SentencePart = {
  readonly text: string;
  readonly tone: 'gain' | 'loss' | 'doubt' | 'equal' | null;
};

/** What the sentence needs of a verdict, from core or over the wire; SI. */
export type Judged = {
  readonly kind: VerdictKind;
  readonly effect: number | null;
  readonly interval95: readonly [number, number] | null;
  readonly curve: {
    readonly engineSpeed_rad_s: ArrayLike<number | null>;
    readonly proven: readonly { readonly from: number; readonly to: number; readonly sign: 1 | -1 }[];
  } | null;
};

type HeadlineWords = {
  readonly gained: (amount: string) => string;
  readonly lost: (amount: string) => string;
  readonly giveOrTake: (half: string) => string;
  readonly up: (rpm: string) => string;
  readonly down: (rpm: string) => string;
  readonly between: (from: string, to: string) => string;
  readonly nothing: string;
  readonly equal: (effect: string) => string;
  readonly openBefore: string;
  readonly open: string;
  readonly openAfter: (title: string) => string;
  readonly incomparable: string;
};

const words: Record<Language, HeadlineWords> = {
  en: {
    gained: (amount) => `gained ${amount}`,
    lost: (amount) => `lost ${amount}`,
    giveOrTake: (half) => `, give or take ${half}`,
    up: (rpm) => `, from ${rpm} up`,
    down: (rpm) => `, up to ${rpm}`,
    between: (from, to) => `, from ${from} to ${to}`,
    nothing: 'changed nothing that matters',
    equal: (effect) => `: ${effect}.`,
    openBefore: 'It is ',
    open: 'not decided yet',
    openAfter: (title) => ` whether ${title} did anything.`,
    incomparable: 'can’t be compared',
  },
  de: {
    gained: (amount) => `brachte ${amount}`,
    lost: (amount) => `kostete ${amount}`,
    giveOrTake: (half) => `, auf ${half} genau`,
    up: (rpm) => `, ab ${rpm}`,
    down: (rpm) => `, bis ${rpm}`,
    between: (from, to) => `, von ${from} bis ${to}`,
    nothing: 'änderte nichts von Belang',
    equal: (effect) => `: ${effect}.`,
    openBefore: 'Es ist ',
    open: 'noch offen',
    openAfter: (title) => `, ob ${title} etwas bewirkt hat.`,
    incomparable: 'ist nicht vergleichbar',
  },
};

/** Where along the engine speed the effect is proven, as the end of a sentence; empty where it says nothing. */
function provenPlace(verdict: Judged, sign: 1 | -1, show: Show): string {
  const curve = verdict.curve;
  const parts = curve?.proven.filter((p) => p.sign === sign) ?? [];
  const [only] = parts;
  // Several pieces would make a list of a sentence; the bar under the plot shows them.
  if (!curve || !only || parts.length > 1) return '';
  const speed = curve.engineSpeed_rad_s;
  const [first, last, from, to] = [0, speed.length - 1, only.from, only.to - 1].map((i) => speed[i] ?? 0);
  if (first === undefined || last === undefined || from === undefined || to === undefined) return '';
  const near = (last - first) * 0.03;
  const text = (value: number) => show.quantity(roundedTo50(value), 'engineSpeed');
  const said = words[show.language];
  if (from - first <= near) return last - to <= near ? '' : said.down(text(to));
  return last - to <= near ? said.up(text(from)) : said.between(text(from), text(to));
}

/** The edge of a band is not known to single revolutions. */
function roundedTo50(engineSpeed_rad_s: number): number {
  const step = (50 * Math.PI) / 30;
  return Math.round(engineSpeed_rad_s / step) * step;
}

/** The verdict on an entry as the headline of the bench, one word in it coloured. */
export function benchHeadline(verdict: Judged, title: string, show: Show): SentencePart[] {
  const said = words[show.language];
  const plain = (text: string): SentencePart => ({ text, tone: null });
  const effect = verdict.effect ?? 0;
  const half = verdict.interval95 ? (verdict.interval95[1] - verdict.interval95[0]) / 2 : 0;
  switch (verdict.kind) {
    case 'gain':
    case 'loss': {
      const amount = show.quantity(Math.abs(effect), 'power');
      const tone = verdict.kind;
      return [
        plain(`${title} `),
        { text: tone === 'gain' ? said.gained(amount) : said.lost(amount), tone },
        plain(
          `${said.giveOrTake(show.bare(half, 'power'))}${provenPlace(verdict, tone === 'gain' ? 1 : -1, show)}.`,
        ),
      ];
    }
    case 'equivalent':
      return [
        plain(`${title} `),
        { text: said.nothing, tone: 'equal' },
        plain(said.equal(show.differenceWithHalf(effect, half, 'power'))),
      ];
    case 'undecided':
      return [plain(said.openBefore), { text: said.open, tone: 'doubt' }, plain(said.openAfter(title))];
    case 'not-comparable':
      return [plain(`${title} `), { text: said.incomparable, tone: 'loss' }, plain('.')];
  }
}
