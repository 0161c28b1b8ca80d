import type { LedgerLine, PullSummary } from '../../core/contract/index.ts';
import type { Note } from '../../core/result/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { halfAround, type ScreenWords, type Show } from '../../core/words/index.ts';
import { type Tone, toneOf } from '../ledger/tone.ts';

/** Pulls that a baseline needs, and that a change is driven for at the least (common practice: three, and two to four). */
const wantedPulls = { baseline: 3, change: 2 } as const;

/** What the large side of the ride view says. */
export type RideEffect = {
  readonly word: string;
  readonly tone: Tone | null;
  /** The number and its unit apart, as they are set in two sizes; null where there is no number to show. */
  readonly amount: { readonly number: string; readonly unit: string } | null;
  /** In order, each a line of its own. */
  readonly lines: readonly string[];
  readonly progress: string;
};

/** The verdict of an entry, or how far its pulls have come. */
export function rideEffect(
  entry: Entry,
  line: LedgerLine,
  words: { readonly show: Show; readonly said: ScreenWords['ride']; readonly note: (note: Note) => string },
): RideEffect {
  const { show, said, note } = words;
  const { verdict, level, pulls } = line;
  const half = (value: number | null) => (value === null ? [] : [said.giveOrTake(show.bare(value, 'power'))]);
  if (pulls === 0) {
    const of = entry.kind === 'baseline' ? wantedPulls.baseline : wantedPulls.change;
    return { word: said.words.waiting, tone: null, amount: null, lines: [], progress: said.progress(0, of) };
  }
  if (!verdict) {
    return {
      word: said.words.baseline,
      tone: null,
      amount: level && apart(show.quantity(level.mean, 'power'), show.unit('power')),
      lines: half(level?.half ?? null),
      progress: said.progress(pulls, wantedPulls.baseline),
    };
  }
  const { kind, effect, interval95, morePulls } = verdict;
  const more = kind === 'undecided' ? (morePulls ?? 0) : 0;
  const progress = said.progress(pulls, Math.max(wantedPulls.change, pulls + more));
  const base = { word: said.words[kind], tone: toneOf(kind), progress };
  if (kind === 'not-comparable' || effect === null) {
    const [reason] = verdict.reasons;
    return { ...base, amount: null, lines: reason ? [note(reason)] : [] };
  }
  return {
    ...base,
    amount: apart(show.difference(effect, 'power'), show.unit('power')),
    lines: [
      ...half(interval95 && halfAround(effect, interval95)),
      ...(kind === 'undecided' ? [morePulls === null ? said.noNumber : said.wouldDecide(morePulls)] : []),
    ],
  };
}

/** Whether the last pull counts, and why not where it does not. */
export function lastPullWords(
  last: PullSummary | null,
  said: ScreenWords['ride'],
  note: (note: Note) => string,
): string {
  if (!last) return '';
  if (last.droppedBecause !== null) return said.lastLeftOut(last.droppedBecause);
  if (last.counts) return said.lastCounts;
  const [flag] = last.flags;
  return said.lastLeftOut(flag ? note(flag) : said.notCounted);
}

function apart(text: string, unit: string): { number: string; unit: string } {
  return { number: text.slice(0, text.length - unit.length).trimEnd(), unit };
}
