import { chosenUnit, fromSi, type ShownKind } from '../units/index.ts';
import { handoverPhrases, type Show } from '../words/index.ts';
import { axisOver, spanOf } from './axis.ts';
import type { ChartAxis, ChartBand, ChartLine } from './chart-spec.ts';

export type Side = 'before' | 'after';
export type Numbers = ArrayLike<number | null>;
/** Numbers in the reader's unit; null is a gap. */
export type Shown = readonly (number | null)[];

/** SI numbers in the reader's unit; a gap is null. */
export function shownOf(values: Numbers, kind: ShownKind, show: Show): Shown {
  const unit = chosenUnit(show.units, kind).id;
  return Array.from(values, (v) => (v === null || !Number.isFinite(v) ? null : fromSi(v, unit)));
}

/** The engine speeds of a curve [rad/s] as the reader's numbers. */
export function speedsOf(values: Numbers, show: Show): readonly number[] {
  return shownOf(values, 'engineSpeed', show).map((v) => v ?? 0);
}

/** The axis of engine speed under a chart. */
export function speedAxis(x: readonly number[], show: Show): ChartAxis {
  return axisOver(spanOf(x), {
    title: `${handoverPhrases(show.language).engineSpeed}, ${show.unit('engineSpeed')}`,
    most: 9,
    room: 0.02,
    text: (value, digits) => show.number(value, digits),
  });
}

/** The band of a mean, half a width to both sides; a gap in either is a gap. */
export function sideBand(ink: Side, x: readonly number[], mean: Shown, half: Shown): ChartBand {
  const edge = (sign: 1 | -1) =>
    mean.map((v, i) => {
      const h = half[i];
      return v === null || h == null ? null : v + sign * h;
    });
  return { kind: 'band', ink, x, low: edge(-1), high: edge(1) };
}

/** The line of a mean: before is dashed, after solid. */
export function sideLine(
  ink: Side,
  x: readonly number[],
  y: Shown,
  label: string,
  labelSide: ChartLine['labelSide'],
): ChartLine {
  return {
    kind: 'line',
    ink,
    dash: ink === 'before' ? 'dashed' : 'solid',
    weight: 'main',
    x,
    y,
    label,
    labelSide,
  };
}

/** Which side's line ends above the other's, so that its label stands above too. */
export function upperSide(before: Shown, after: Shown): Side {
  const lastOf = (values: Shown) => values.findLast((v) => v !== null) ?? 0;
  return lastOf(after) >= lastOf(before) ? 'after' : 'before';
}
