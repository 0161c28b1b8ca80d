import { axisOver, type ChartLine, type ChartSpec, spanOf } from '../../core/handover/index.ts';
import type { Plan, Setup, Strategy } from '../../core/injection/index.ts';
import { fromSi } from '../../core/units/index.ts';
import { type Show, screenWords } from '../../core/words/index.ts';

/** Room right of the furthest full point, as a share: the handle must not stand on the edge. */
const rightRoom = 0.04;

/**
 * Fluid over boost at the engine speed of peak power: the window that practice allows as a ribbon, the need in it,
 * and what each way of setting the spray would deliver; the driven one in the ink of after.
 */
export function feedChart(plan: Plan, setup: Setup, show: Show): ChartSpec {
  const said = screenWords(show.language).plan;
  const bar = (pressure: number) => fromSi(pressure, show.units.boost);
  const flow = (value: number) => fromSi(value, show.units.volumeFlow);
  const { boost, need } = plan.driven.overBoost;
  const x = boost.map(bar);
  const { peakSpeed_rad_s, peakBoost } = plan.path;
  const windowAt = (percent: number) =>
    boost.map((b) => flow((percent / 100) * (plan.fuel.at(peakSpeed_rad_s, b) / plan.system.density)));
  const { ratioLow_percent, ratioHigh_percent } = setup.targets;
  // Below the foot of the need nobody asks for fluid, so there is no window either.
  const asked = (values: number[]) => values.map((v, i) => ((need[i] ?? 0) > 0 ? v : null));
  const [low, high] = [asked(windowAt(ratioLow_percent)), asked(windowAt(ratioHigh_percent))];
  const line = (strategy: Strategy, isDriven: boolean): ChartLine => ({
    kind: 'line',
    ink: isDriven ? 'after' : 'before',
    dash: isDriven ? 'solid' : 'dashed',
    weight: isDriven ? 'main' : 'thin',
    ...deliveredLine(strategy, bar, flow),
    label: '',
    labelSide: 'above',
  });
  const others = plan.strategies.filter((s) => s.name !== plan.driven.name);
  const lines = [...others.map((s) => line(s, false)), line(plan.driven, true)];
  const furthest = Math.max(bar(peakBoost), ...plan.strategies.map((s) => bar(s.full)));
  const text = (value: number, digits: number) => show.number(value, digits);
  const xAxis = axisOver([0, furthest * (1 + rightRoom)], {
    title: `${said.boost}, ${show.unit('boost')}`,
    most: 9,
    room: 0,
    text,
  });
  return {
    description: said.describe,
    x: { ...xAxis, range: [-furthest * 0.02, furthest * (1 + rightRoom)] },
    panels: [
      {
        id: 'flow',
        share: 1,
        y: axisOver(spanOf(...lines.map((l) => l.y), need.map(flow), high), {
          title: said.flowAt(show.unit('volumeFlow'), show.quantity(peakSpeed_rad_s, 'engineSpeed')),
          most: 6,
          // The word for peak boost stands above the ribbon.
          room: 0.14,
          include: 0,
          text,
        }),
        marks: [
          { kind: 'band', ink: 'gain', x, low, high },
          { kind: 'rule', ink: 'soft', dash: 'dotted', along: 'y', at: bar(peakBoost), label: said.peak },
          {
            kind: 'line',
            ink: 'gain',
            dash: 'dotted',
            weight: 'main',
            x,
            y: need.map(flow),
            label: '',
            labelSide: 'above',
          },
          ...lines,
        ],
      },
    ],
    spans: null,
  };
}

/** Delivered flow up to peak, and on to the full point where that lies beyond. */
function deliveredLine(strategy: Strategy, bar: (v: number) => number, flow: (v: number) => number) {
  const { boost, delivered } = strategy.overBoost;
  return { x: boost.map(bar), y: delivered.map(flow) };
}
