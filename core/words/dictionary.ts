import type { FitRuleId } from '../fit/index.ts';
import type { QuantityId } from '../log/index.ts';
import type { NoteCode, NoteFacts, ProblemCode, ProblemFacts } from '../result/index.ts';
import type { Show } from './show.ts';

/** A problem as a person reads it. Where it stands is set in front by `problemText`. */
export type ProblemSentence = { readonly message: string; readonly remedy: string };

export type ProblemWords = {
  readonly [C in ProblemCode]: (facts: ProblemFacts[C], show: Show) => ProblemSentence;
};
export type NoteWords = { readonly [C in NoteCode]: (facts: NoteFacts[C], show: Show) => string };

/** The words of one area: every code that starts with its prefix. */
export type ProblemWordsOf<Prefix extends string> = Pick<
  ProblemWords,
  Extract<ProblemCode, `${Prefix}/${string}`>
>;
export type NoteWordsOf<Prefix extends string> = Pick<NoteWords, Extract<NoteCode, `${Prefix}/${string}`>>;

/** A question that “yes” answers soundly, why it is asked, and what to do after “no”. */
export type FitRuleWords = {
  readonly [R in FitRuleId]: {
    readonly question: string;
    readonly reason: string;
    readonly remedy: string;
  };
};

/** Everything that a person reads, in one language. */
export type Dictionary = {
  readonly problems: ProblemWords;
  readonly notes: NoteWords;
  readonly quantities: { readonly [Q in QuantityId]: string };
  readonly fitRules: FitRuleWords;
};
