import { handoverPhrases, type Show } from '../words/index.ts';
import { axisOver, spanOf } from './axis.ts';
import { type Numbers, shownOf, sideBand, sideLine, speedAxis, speedsOf, upperSide } from './chart-parts.ts';
import type { ChartLine, ChartSpec } from './chart-spec.ts';

/** Before, after and their difference, SI, all of one length; a gap is null or NaN. */
export type CurvePair = {
  readonly engineSpeed_rad_s: Numbers;
  readonly before: Numbers;
  readonly after: Numbers;
  readonly beforeHalf: Numbers;
  readonly afterHalf: Numbers;
  readonly delta: Numbers;
  readonly low: Numbers;
  readonly high: Numbers;
  readonly proven: readonly { readonly from: number; readonly to: number; readonly sign: 1 | -1 }[];
};

/** Thin lines of single pulls behind the means; a pinned one of any entry is dotted, above them. */
export type SinglePull = {
  readonly side: 'before' | 'after' | 'pinned';
  readonly engineSpeed_rad_s: Numbers;
  readonly wheelPower: Numbers;
};

/**
 * Overlay of two entries with the difference strip under it, as data: the bench and the printed handover draw
 * the same description.
 *
 * @param curve   of the verdict, SI
 * @param labels  what stands at the end of each line, `2 · before`
 * @param show    language and units of the reader
 * @param pulls   single pulls to draw thin; none by default
 */
export function comparisonChart(
  curve: CurvePair,
  labels: { readonly before: string; readonly after: string },
  show: Show,
  pulls: readonly SinglePull[] = [],
): ChartSpec {
  const words = handoverPhrases(show.language);
  const power = (values: Numbers) => shownOf(values, 'power', show);
  const x = speedsOf(curve.engineSpeed_rad_s, show);
  const before = power(curve.before);
  const after = power(curve.after);
  const delta = power(curve.delta);
  const low = power(curve.low);
  const high = power(curve.high);
  const singleOf = (pull: SinglePull): ChartLine => ({
    kind: 'line',
    ...singleLooks[pull.side],
    x: speedsOf(pull.engineSpeed_rad_s, show),
    y: power(pull.wheelPower),
    label: '',
    labelSide: 'above',
  });
  const singles = pulls.filter((p) => p.side !== 'pinned').map(singleOf);
  const pinned = pulls.filter((p) => p.side === 'pinned').map(singleOf);
  const upper = upperSide(before, after);
  const sign = inkOf(curve.proven);
  const beforeBand = sideBand('before', x, before, power(curve.beforeHalf));
  const afterBand = sideBand('after', x, after, power(curve.afterHalf));
  const powerUnit = show.unit('power');
  const parts = curve.proven.flatMap((part) => {
    const from = x[part.from];
    const to = x[part.to - 1];
    if (from === undefined || to === undefined) return [];
    return [{ ink: part.sign > 0 ? ('gain' as const) : ('loss' as const), from, to }];
  });
  return {
    description: words.chartDescription(labels.before, labels.after),
    x: speedAxis(x, show),
    panels: [
      {
        id: 'power',
        share: 0.72,
        y: axisOver(
          spanOf(beforeBand.low, beforeBand.high, afterBand.low, afterBand.high, ...pinnedIn(pinned, x)),
          {
            title: `${words.wheelPower}, ${powerUnit}`,
            most: 7,
            room: 0.1,
            text: (value, digits) => show.number(value, digits),
          },
        ),
        marks: [
          ...singles,
          beforeBand,
          afterBand,
          sideLine('before', x, before, labels.before, upper === 'before' ? 'above' : 'below'),
          sideLine('after', x, after, labels.after, upper === 'after' ? 'above' : 'below'),
          ...pinned,
        ],
      },
      {
        id: 'difference',
        share: 0.28,
        y: axisOver(differenceSpan(delta, low, high), {
          title: words.difference(powerUnit),
          most: 4,
          room: 0.12,
          include: 0,
          text: (value, digits) => show.signed(value, digits),
        }),
        marks: [
          { kind: 'band', ink: sign, x, low, high },
          { kind: 'rule', ink: 'soft', dash: 'solid', along: 'x', at: 0, label: '' },
          {
            kind: 'line',
            ink: sign,
            dash: 'solid',
            weight: 'main',
            x,
            y: delta,
            label: '',
            labelSide: 'above',
          },
        ],
      },
    ],
    spans: parts.length > 0 ? { label: words.provenBar, parts } : null,
  };
}

const singleLooks: Readonly<Record<SinglePull['side'], Pick<ChartLine, 'ink' | 'dash' | 'weight'>>> = {
  before: { ink: 'before', dash: 'solid', weight: 'thin' },
  after: { ink: 'after', dash: 'solid', weight: 'thin' },
  pinned: { ink: 'ink', dash: 'dotted', weight: 'main' },
};

/** Values of pinned pulls where the two curves run: a pull may reach further, and the axis follows only these. */
function pinnedIn(pinned: readonly ChartLine[], x: readonly number[]): (number | null)[][] {
  const [low, high] = [Math.min(...x), Math.max(...x)];
  return pinned.map((line) =>
    line.y.filter((_, i) => {
      const at = line.x[i];
      return at !== undefined && at >= low && at <= high;
    }),
  );
}

/** The ink of what is proven over most of the band; where nothing is, the strip claims neither gain nor loss. */
function inkOf(proven: CurvePair['proven']): 'gain' | 'loss' | 'doubt' {
  const balance = proven.reduce((sum, part) => sum + part.sign * (part.to - part.from), 0);
  return proven.length === 0 ? 'doubt' : balance < 0 ? 'loss' : 'gain';
}

/** The band is shown this many of its usual half widths beyond the curve; where it is wider it leaves the panel. */
const shownHalves = 2.5;

/**
 * Range of the difference panel. Where boost builds up the band can be ten times as wide as elsewhere; an axis
 * over all of it would press the part that decides into a line.
 */
function differenceSpan(
  delta: readonly (number | null)[],
  low: readonly (number | null)[],
  high: readonly (number | null)[],
): [number, number] | null {
  const all = spanOf(delta, low, high);
  const curve = spanOf(delta);
  const halves = low
    .flatMap((l, i) => {
      const h = high[i];
      return l === null || h == null ? [] : [(h - l) / 2];
    })
    .sort((a, b) => a - b);
  const usual = halves[Math.floor(halves.length / 2)];
  if (!all || !curve || usual === undefined) return all;
  return [Math.max(all[0], curve[0] - shownHalves * usual), Math.min(all[1], curve[1] + shownHalves * usual)];
}
