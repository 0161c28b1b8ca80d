import type { ChartAxis } from './chart-spec.ts';

const steps = [1, 2, 2.5, 5, 10, 20, 25, 50];

/**
 * Round ticks inside a range: the finest of 1, 2, 2.5 and 5 times a power of ten that gives at most `most` of
 * them. Both ends must be finite and apart; a range of no width is widened by its own size.
 *
 * Check: 48 to 206 with at most 7 gives 50, 75, ... 200.
 */
export function roundTicks(low: number, high: number, most: number): { ticks: number[]; digits: number } {
  const width = high - low;
  const rough = width / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  const count = (step: number) => Math.floor(high / step + 1e-9) - Math.ceil(low / step - 1e-9) + 1;
  const step = steps.map((s) => s * power).find((s) => count(s) <= most) ?? 100 * power;
  const first = Math.ceil(low / step - 1e-9);
  const ticks = Array.from({ length: count(step) }, (_, i) => (first + i) * step);
  // 2.5 times a power needs one digit more than the power itself.
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9) + (isTwoAndHalf(step) ? 1 : 0));
  return { ticks, digits };
}

function isTwoAndHalf(step: number): boolean {
  const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
  return Math.abs(lead - 2.5) < 1e-6;
}

/** The span of all finite values, null where there is none. */
export function spanOf(...lists: readonly (readonly (number | null)[])[]): [number, number] | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const list of lists) {
    for (const v of list) {
      if (v === null || !Number.isFinite(v)) continue;
      if (v < low) low = v;
      if (v > high) high = v;
    }
  }
  return low <= high ? [low, high] : null;
}

/**
 * An axis over the values with room at both ends, so that no curve touches a tick label.
 *
 * @param span   smallest and largest value shown, null for an empty plot (0 to 1)
 * @param room   share of the span left free at each end
 * @param include  a value that must be on the axis, such as zero for a difference
 */
export function axisOver(
  span: readonly [number, number] | null,
  options: {
    readonly title: string;
    readonly most: number;
    readonly room: number;
    readonly include?: number;
    readonly text: (value: number, digits: number) => string;
  },
): ChartAxis {
  let [low, high] = span ?? [0, 1];
  if (options.include !== undefined) {
    low = Math.min(low, options.include);
    high = Math.max(high, options.include);
  }
  if (high - low < 1e-12) {
    const half = Math.max(Math.abs(high) * 0.05, 0.5);
    low -= half;
    high += half;
  }
  const room = (high - low) * options.room;
  const range = [low - room, high + room] as const;
  const { ticks, digits } = roundTicks(range[0], range[1], options.most);
  return { title: options.title, range, ticks: ticks.map((at) => ({ at, text: options.text(at, digits) })) };
}
