import type { HandoverChoices, Logo } from '../../session/index.ts';
import type { Language } from '../../words/index.ts';
import type { ChartSpec } from '../chart-spec.ts';

/** How a verdict is coloured, and marked where there is no colour. */
export type Tone = 'gain' | 'loss' | 'even' | 'doubt' | 'refused' | 'none';

/** A labelled value, both in the reader's words and units; `isUnknown` where nobody noted it. */
export type Fact = { readonly label: string; readonly value: string; readonly isUnknown?: boolean };

/** An effect with its interval on the table's common scale, all in the shown unit. */
export type Whisker = { readonly effect: number; readonly low: number; readonly high: number };

/** `group` is said once, over all neighbours that share it; `whiskers` draws the effects on the table's scale. */
export type Column = {
  readonly title: string;
  readonly group?: string;
  readonly isFigure?: boolean;
  readonly width?: 'number' | 'small' | 'medium' | 'name' | 'whiskers' | 'effect';
};

/** The one scale of all effects in a table, in the shown unit, with its ticks in the reader's numbers. */
export type EffectScale = {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
};

export type Row = {
  readonly cells: readonly Cell[];
  readonly isDropped?: boolean;
  readonly isTotal?: boolean;
  /** What is said of the row as a whole, under its cells and across them. */
  readonly remarks?: readonly string[];
};

/** A cell: its text, what stands under it in small print, and an effect drawn beside it. */
export type Cell = {
  readonly text: string;
  readonly more?: readonly string[];
  readonly tone?: Tone;
  readonly whisker?: Whisker;
};

export type Block =
  | { readonly kind: 'text'; readonly text: string; readonly look?: 'lead' | 'small' | 'warn' | 'free' }
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'facts'; readonly facts: readonly Fact[] }
  /** Lists of facts under headings, side by side. */
  | {
      readonly kind: 'groups';
      readonly groups: readonly { readonly title: string; readonly facts: readonly Fact[] }[];
    }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly columns: readonly Column[];
      readonly rows: readonly Row[];
      readonly scale: EffectScale | null;
      /** Narrow letters, for a table of an engine control. */
      readonly isSmall?: boolean;
    }
  | {
      readonly kind: 'chart';
      readonly id: string;
      readonly chart: ChartSpec;
      readonly height: number;
      /** 720 across the sheet unless told; letters print at one size whatever the width. */
      readonly width?: number;
      readonly caption: string;
    }
  | {
      readonly kind: 'list';
      readonly isOrdered: boolean;
      readonly items: readonly string[];
      readonly look?: 'warn';
    }
  | { readonly kind: 'signatures'; readonly text: string; readonly lines: readonly string[] };

export type Section = {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
  /** Never cut by the end of a page. */
  readonly isKeptWhole?: boolean;
  /** Stands beside its neighbour of the same kind. */
  readonly isHalf?: boolean;
  /** Begins a page in the full form. */
  readonly startsPage?: boolean;
  /** Never parted from the section before it by the end of a page. */
  readonly staysWithLast?: boolean;
};

/** A figure set large under the headline. */
export type KeyFigure = { readonly label: string; readonly value: string; readonly more: string };

/**
 * The customer's summary as data: every word and number on it, in the customer's language and units, in the order
 * it is printed. Nothing private is in it; what is not here can't be printed.
 */
export type HandoverDocument = {
  readonly language: Language;
  readonly form: HandoverChoices['form'];
  readonly paper: HandoverChoices['paper'];
  readonly title: string;
  readonly sessionName: string;
  readonly carName: string;
  readonly date: string;
  readonly dateIso: string;
  readonly customer: string;
  readonly shop: string;
  readonly logo: Logo | null;
  readonly invented: string | null;
  readonly headline: { readonly text: string; readonly tone: Tone; readonly means: string };
  readonly figures: readonly KeyFigure[];
  readonly sections: readonly Section[];
};
