/**
 * A plot as data, in the reader's units: the screen draws it with one renderer, the printed handover with
 * another, and a test reads it in a diff. Nothing in it knows a pixel or a colour.
 */
export type ChartInk = 'before' | 'after' | 'gain' | 'loss' | 'doubt' | 'ink' | 'soft' | 'within';

export type ChartDash = 'solid' | 'dashed' | 'dotted';

/** Ticks are part of the spec, so that screen and print agree and no label can run into another. */
export type ChartAxis = {
  /** `Wheel power, kW`: quantity and unit. */
  readonly title: string;
  readonly range: readonly [number, number];
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
};

/** x and y have one length; null is a gap that stays a gap. */
export type ChartLine = {
  readonly kind: 'line';
  readonly ink: ChartInk;
  readonly dash: ChartDash;
  /** A main line is drawn strong, one of many pulls thin. */
  readonly weight: 'main' | 'thin';
  readonly x: readonly number[];
  readonly y: readonly (number | null)[];
  /** Set at the line's end, `3 · after`; empty for none. */
  readonly label: string;
  /** Which side of the line's end the label stands on. */
  readonly labelSide: 'above' | 'below';
};

/** A band between two curves. */
export type ChartBand = {
  readonly kind: 'band';
  readonly ink: ChartInk;
  readonly x: readonly number[];
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
};

/** Single marks. */
export type ChartPoints = {
  readonly kind: 'points';
  readonly ink: ChartInk;
  readonly x: readonly number[];
  readonly y: readonly (number | null)[];
  readonly label: string;
};

/** A level or a moment: a line right across the panel, with its word. */
export type ChartRule = {
  readonly kind: 'rule';
  readonly ink: ChartInk;
  readonly dash: ChartDash;
  readonly along: 'x' | 'y';
  readonly at: number;
  readonly label: string;
};

export type ChartMark = ChartLine | ChartBand | ChartPoints | ChartRule;

/** Part of the x axis with a meaning of its own, a bar under the last panel: `proven`. */
export type ChartSpan = {
  readonly ink: ChartInk;
  readonly from: number;
  readonly to: number;
};

export type ChartPanel = {
  readonly id: string;
  /** Share of the height, all panels together make one. */
  readonly share: number;
  readonly y: ChartAxis;
  readonly marks: readonly ChartMark[];
};

export type ChartSpec = {
  /** What the plot shows, in one sentence, for a reader who can't see it. */
  readonly description: string;
  /** Shared by all panels. */
  readonly x: ChartAxis;
  readonly panels: readonly ChartPanel[];
  readonly spans: { readonly label: string; readonly parts: readonly ChartSpan[] } | null;
};
