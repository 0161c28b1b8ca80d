import { medianOf } from '../median.ts';
import type { Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import { dragOf, inertiaAllowance, torqueShare } from './middling-car.ts';

/** Torque up to a factor of the car's own, in a bin of engine speed, and of how many samples. */
type Effort = { readonly effort: number; readonly count: number };
/** In the order of engine speed. */
export type EffortCurve = ReadonlyMap<number, Effort>;

/** A bin of fewer samples is the edge of a span and shows no strength. */
export const fewestInBin = 3;
/** Engine speeds are compared in bins of so many rad/s, some 500 rpm. */
const binWidth = 50;
/** What another span is measured by climbs so far and lasts so long: in less a clutch or a shaft may swing. */
const measure = { climb: 1.4, lasts_s: 1.2 } as const;
/** So many of the strongest measure the others: days of driving in one file must not take hours. */
export const mostMeasures = 200;
/**
 * Over the upper half of a span part throttle makes less than this share of another's torque at the same engine speeds;
 * what is left is for slopes and gusts: 1 in 100 up and down is 0.93 where the car gains 3 m/s2 (common practice).
 */
const fullShare = { sameGear: 0.88, otherGear: 0.86 } as const;
/** Ratios of engine to road speed that lie so near are one gear (common practice). */
const sameRatio = 0.06;
/** At its ends a span's slope is blurred with what is beside it [s]. */
const blurred = { start_s: 0.35, end_s: 0.25 } as const;
/** Where no other span was driven a weak one is no pull: share of the strongest span's middle torque. */
const strongAlone = 0.7;

/** What forces are computed from, one per sample, SI. */
export type ForceSignals = {
  readonly engineSpeed: Float64Array;
  /** Engine speed over vehicle speed [rad/m]; null where no road speed is logged. */
  readonly ratio: Float64Array | null;
  readonly time: Float64Array;
};

/**
 * Torque over engine speed, up to a factor of the car's own: acceleration and a usual drag over the gear's ratio, the
 * engine's own inertia counted in; the slope of engine speed itself where no road speed is logged.
 *
 * @param slope  of engine speed [rad/s2], one per sample
 */
export function effortCurve(signals: ForceSignals, slope: Float64Array, span: Span): EffortCurve {
  const { engineSpeed, ratio } = signals;
  const bins = new Map<number, number[]>();
  for (let i = span.from; i < span.to; i++) {
    const w = engineSpeed[i] ?? Number.NaN;
    const k = ratio ? (ratio[i] ?? Number.NaN) : 1;
    const rise = slope[i] ?? Number.NaN;
    const effort = ratio ? rise * (torqueShare(k) / k) + dragOf(w / k) / k : rise;
    if (Number.isNaN(effort)) continue;
    const bin = Math.round(w / binWidth);
    const list = bins.get(bin);
    if (list) list.push(effort);
    else bins.set(bin, [effort]);
  }
  return new Map(
    [...bins]
      .sort(([a], [b]) => a - b)
      .map(([bin, list]) => [bin, { effort: middleOf(list), count: list.length }]),
  );
}

/**
 * Which spans make the torque of full throttle as far as the others tell: one engine makes one torque at an engine
 * speed, in every gear. Where no other span was driven at the same engine speeds, a weak one does not pass.
 *
 * @param signals  of a log with road speed
 *
 * Valid: pulls at one boost and much the same slope. A pull right after the foot came down high in the engine speeds
 *        may lack charge; its upper half is compared.
 */
export function atFullForce(spans: readonly Span[], signals: ForceSignals, slope: Float64Array): boolean[] {
  const { engineSpeed, ratio, time } = signals;
  const looked = spans.map((span): Looked => {
    const inner = withoutEdges(span, time);
    const { from, to } = span;
    const climb = (engineSpeed[to - 1] ?? 0) / (engineSpeed[from] ?? Number.POSITIVE_INFINITY);
    const curve = effortCurve(signals, slope, inner);
    return {
      curve,
      level: middleEffort(curve),
      ratio: ratio ? medianOf(ratio, inner.from, inner.to) : Number.NaN,
      measures: climb >= measure.climb && (time[to - 1] ?? 0) - (time[from] ?? 0) >= measure.lasts_s,
    };
  });
  const measures = looked
    .filter((span) => span.measures)
    .sort((a, b) => b.level - a.level)
    .slice(0, mostMeasures);
  const highest = measures[0]?.level ?? 0;
  return looked.map((span) => {
    const shares = [true, false].map((inGear) => upperShare(span, measures, inGear));
    if (shares.every(Number.isNaN)) return span.level >= strongAlone * highest;
    return !((shares[0] ?? 1) < fullShare.sameGear || (shares[1] ?? 1) < fullShare.otherGear);
  });
}

/** What is compared of a span. */
type Looked = {
  readonly curve: EffortCurve;
  readonly level: number;
  /** Engine speed over vehicle speed, the gear. */
  readonly ratio: number;
  /** Whether others may be measured by it. */
  readonly measures: boolean;
};

/** Middle share of the others' torque over the upper half of a span; NaN where no other was driven there. */
function upperShare(span: Looked, measures: readonly Looked[], inGear: boolean): number {
  const others = measures.filter(
    (other) => other !== span && Math.abs(other.ratio / span.ratio - 1) < sameRatio === inGear,
  );
  const shares: number[] = [];
  for (const [bin, { effort, count }] of span.curve) {
    if (count < fewestInBin) continue;
    let most = 0;
    for (const { curve, ratio } of others) {
      const there = curve.get(bin);
      if (there && there.count >= fewestInBin)
        most = Math.max(most, there.effort / inertiaAllowance(span.ratio, ratio));
    }
    if (most > 0) shares.push(effort / most);
  }
  return shares.length > 0 ? middleOf(shares.slice(shares.length >> 1)) : Number.NaN;
}

/** A span without its first and last moments, if it is long enough to go without. */
function withoutEdges({ from, to }: Span, time: Float64Array): Span {
  const [start, end] = [time[from] ?? 0, time[to - 1] ?? 0];
  if (end - start < 2 * (blurred.start_s + blurred.end_s)) return { from, to };
  return {
    from: indexAt(time, start + blurred.start_s, from, to),
    to: indexAt(time, end - blurred.end_s, from, to),
  };
}

/** Share of the strongest span in a file, bin by bin, that each makes on its middle. */
export function sharesOfStrongest(curves: readonly EffortCurve[]): number[] {
  const envelope = new Map<number, number>();
  for (const curve of curves)
    for (const [bin, { effort, count }] of curve)
      if (count >= fewestInBin) envelope.set(bin, Math.max(effort, envelope.get(bin) ?? 0));
  return curves.map((curve) =>
    middleOf([...curve].map(([bin, { effort }]) => effort / (envelope.get(bin) ?? effort))),
  );
}

/** Median effort with each bin counted by its samples: one leap within a span must not pass for its strength. */
export function middleEffort(curve: EffortCurve): number {
  const bins = [...curve.values()].sort((a, b) => a.effort - b.effort);
  const half = bins.reduce((sum, { count }) => sum + count, 0) / 2;
  let passed = 0;
  for (const { effort, count } of bins) {
    passed += count;
    if (passed > half) return effort;
  }
  return 0;
}

export function middleOf(list: number[]): number {
  return list.sort((a, b) => a - b)[list.length >> 1] ?? 0;
}
