import type { LedgerLine } from '../../core/contract/index.ts';
import { axisOver, type ChartAxis } from '../../core/handover/index.ts';
import { chosenUnit, fromSi } from '../../core/units/index.ts';
import type { Show } from '../../core/words/index.ts';

export type ForestScale = {
  /** Share of the width at which this effect [W] stands, 0 to 1. */
  readonly at: (effect: number) => number;
  readonly ticks: readonly { readonly share: number; readonly text: string }[];
  readonly unit: string;
};

/** An interval may reach this many times further than the largest effect; beyond it runs off the edge. */
const furthest = 2;

/** Width of the strip in letters of its labels, on a window of 1280 pixels; as measured there. */
const strip_letters = 33;

/** No label comes nearer to the next than one letter; the last one carries the unit. */
function isRoomy({ range: [low, high], ticks, title }: ChartAxis): boolean {
  const widths = ticks.map(({ text }, i) => text.length + (i === ticks.length - 1 ? 1 + title.length : 0));
  return ticks.every(({ at }, i) => {
    const [before, width = 0] = [ticks[i - 1], widths[i]];
    if (!before) return true;
    const apart = (strip_letters * (at - before.at)) / (high - low);
    return apart >= ((widths[i - 1] ?? 0) + width) / 2 + 1;
  });
}

/**
 * The one scale that all effects of a session stand on, zero always on it. A single undecided entry with a huge
 * interval must not squeeze all others into a dot, so such an interval is cut at the edge.
 */
export function forestScale(lines: readonly LedgerLine[], show: Show): ForestScale | null {
  const judged = lines.flatMap(({ verdict }) =>
    verdict && verdict.effect !== null && verdict.kind !== 'not-comparable'
      ? [{ effect: verdict.effect, interval: verdict.interval95 ?? [verdict.effect, verdict.effect] }]
      : [],
  );
  if (judged.length === 0) return null;
  const largest = Math.max(...judged.map((j) => Math.abs(j.effect)));
  const limit = largest > 0 ? largest * furthest : Number.POSITIVE_INFINITY;
  const ends = judged.flatMap((j) => j.interval.map((v) => Math.min(limit, Math.max(-limit, v ?? 0))));
  const unit = chosenUnit(show.units, 'power');
  const span = [fromSi(Math.min(...ends), unit.id), fromSi(Math.max(...ends), unit.id)] as const;
  const axisWith = (most: number) =>
    axisOver(span, {
      title: unit.symbol,
      most,
      room: 0.06,
      include: 0,
      text: (value, digits) => show.signed(value, digits),
    });
  const axis = [5, 4, 3].map(axisWith).find(isRoomy) ?? axisWith(2);
  const [low, high] = axis.range;
  const share = (shown: number) => (shown - low) / (high - low);
  return {
    at: (effect) => share(fromSi(effect, unit.id)),
    ticks: axis.ticks.map((t) => ({ share: share(t.at), text: t.text })),
    unit: unit.symbol,
  };
}
