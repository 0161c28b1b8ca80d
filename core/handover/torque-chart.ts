import { chosenUnit, fromSi } from '../units/index.ts';
import { handoverPhrases, type Show } from '../words/index.ts';
import { axisOver, spanOf } from './axis.ts';
import type { ChartBand, ChartLine, ChartSpec } from './chart-spec.ts';
import type { CurvePair } from './comparison-chart.ts';
import { torqueOf } from './facts/index.ts';

type Sides = Pick<CurvePair, 'before' | 'after' | 'beforeHalf' | 'afterHalf' | 'engineSpeed_rad_s'>;

/** Torque at the wheels, referred to engine speed, before and after with the bands of their means. */
export function torqueChart(
  curve: Sides,
  labels: { readonly before: string; readonly after: string },
  show: Show,
): ChartSpec {
  const words = handoverPhrases(show.language);
  const unit = chosenUnit(show.units, 'torque').id;
  const speedUnit = chosenUnit(show.units, 'engineSpeed').id;
  const numbers = (values: CurvePair['before']) => Array.from(values, (v) => v ?? Number.NaN);
  const speed = numbers(curve.engineSpeed_rad_s);
  const x = speed.map((v) => fromSi(v, speedUnit));
  const torque = (values: CurvePair['before']) =>
    Array.from(torqueOf(numbers(values), speed), (v) => (Number.isFinite(v) ? fromSi(v, unit) : null));
  const sides = (['before', 'after'] as const).map((ink) => {
    const y = torque(curve[ink]);
    const half = torque(curve[`${ink}Half`]);
    const edge = (sign: 1 | -1) =>
      y.map((v, i) => {
        const h = half[i] ?? null;
        return v === null || h === null ? null : v + sign * h;
      });
    return { ink, y, low: edge(-1), high: edge(1) };
  });
  const lastOf = (ink: 'before' | 'after') =>
    sides.find((s) => s.ink === ink)?.y.findLast((v) => v !== null) ?? 0;
  const upper = lastOf('after') >= lastOf('before') ? 'after' : 'before';
  const text = (value: number, digits: number) => show.number(value, digits);
  return {
    description: words.torqueDescription(labels.before, labels.after),
    x: axisOver(spanOf(x), {
      title: `${words.engineSpeed}, ${show.unit('engineSpeed')}`,
      most: 9,
      room: 0.02,
      text,
    }),
    panels: [
      {
        id: 'torque',
        share: 1,
        y: axisOver(spanOf(...sides.flatMap((s) => [s.y, s.low, s.high])), {
          title: `${words.wheelTorque}, ${show.unit('torque')}`,
          most: 6,
          room: 0.1,
          text,
        }),
        marks: [
          ...sides.map(({ ink, low, high }): ChartBand => ({ kind: 'band', ink, x, low, high })),
          ...sides.map(
            ({ ink, y }): ChartLine => ({
              kind: 'line',
              ink,
              dash: ink === 'before' ? 'dashed' : 'solid',
              weight: 'main',
              x,
              y,
              label: labels[ink],
              labelSide: ink === upper ? 'above' : 'below',
            }),
          ),
        ],
      },
    ],
    spans: null,
  };
}
