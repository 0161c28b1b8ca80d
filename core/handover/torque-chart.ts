import { handoverPhrases, type Show } from '../words/index.ts';
import { axisOver, spanOf } from './axis.ts';
import { shownOf, sideBand, sideLine, speedAxis, speedsOf, upperSide } from './chart-parts.ts';
import type { ChartSpec } from './chart-spec.ts';
import type { CurvePair } from './comparison-chart.ts';
import { torqueOf } from './facts/index.ts';

type Sides = Pick<CurvePair, 'before' | 'after' | 'beforeHalf' | 'afterHalf' | 'engineSpeed_rad_s'>;

/**
 * Torque at the wheels, referred to engine speed, before and after with the bands of their means.
 *
 * @param curve   power of the verdict, SI
 * @param labels  what stands at the end of each line, `2 · before`
 * @param show    language and units of the reader
 */
export function torqueChart(
  curve: Sides,
  labels: { readonly before: string; readonly after: string },
  show: Show,
): ChartSpec {
  const words = handoverPhrases(show.language);
  const numbers = (values: CurvePair['before']) => Array.from(values, (v) => v ?? Number.NaN);
  const speed = numbers(curve.engineSpeed_rad_s);
  const torque = (values: CurvePair['before']) => shownOf(torqueOf(numbers(values), speed), 'torque', show);
  const x = speedsOf(curve.engineSpeed_rad_s, show);
  const means = { before: torque(curve.before), after: torque(curve.after) };
  const bands = (['before', 'after'] as const).map((ink) =>
    sideBand(ink, x, means[ink], torque(curve[`${ink}Half`])),
  );
  const upper = upperSide(means.before, means.after);
  return {
    description: words.torqueDescription(labels.before, labels.after),
    x: speedAxis(x, show),
    panels: [
      {
        id: 'torque',
        share: 1,
        y: axisOver(spanOf(means.before, means.after, ...bands.flatMap((b) => [b.low, b.high])), {
          title: `${words.wheelTorque}, ${show.unit('torque')}`,
          most: 6,
          room: 0.1,
          text: (value, digits) => show.number(value, digits),
        }),
        marks: [
          ...bands,
          ...(['before', 'after'] as const).map((ink) =>
            sideLine(ink, x, means[ink], labels[ink], ink === upper ? 'above' : 'below'),
          ),
        ],
      },
    ],
    spans: null,
  };
}
