import type { ChartSpec } from './chart-spec.ts';

/** A labelled fact, both already in the reader's words and units. */
export type Fact = { readonly label: string; readonly value: string };

/** One line of what each change was worth. */
export type ChangeLine = {
  readonly number: number;
  readonly title: string;
  readonly pulls: string;
  readonly state: 'kept' | 'dropped' | 'not-driven';
  /** `+10.9 ± 1.4 kW`, or why there is none. */
  readonly effect: string;
  readonly sentence: string;
  readonly note: string;
  /** Place of the effect and its interval on the common scale, all in the shown unit; null off the scale. */
  readonly whisker: { readonly effect: number; readonly low: number; readonly high: number } | null;
  readonly tone: 'gain' | 'loss' | 'even' | 'doubt' | 'refused' | 'none';
};

/**
 * The customer summary as data: every word and number on it, in the customer's language and units. Nothing
 * private is in it; what is not here can't be printed.
 */
export type Handover = {
  readonly language: string;
  readonly title: string;
  readonly sessionName: string;
  readonly date: string;
  readonly invented: string | null;
  readonly headline: string;
  readonly facts: readonly Fact[];
  readonly changes: readonly ChangeLine[];
  readonly scale: { readonly low: number; readonly high: number; readonly unit: string } | null;
  readonly chart: ChartSpec | null;
  readonly notes: string;
};
