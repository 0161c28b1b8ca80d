import type { ChartSpec } from '../../core/handover/index.ts';
import type { Plan } from '../../core/injection/index.ts';
import { fromSi, toSi } from '../../core/units/index.ts';
import { panelBoxes, pixelAt, xAt } from '../chart/chart-frame.ts';
import { useWords } from '../hooks/use-words.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import { ChartHandle } from './ChartHandle.tsx';

export type FeedHandlesProps = {
  readonly spec: ChartSpec;
  readonly size: { readonly width: number; readonly height: number };
  readonly plan: Plan;
  readonly sheet: Sheet;
};

/** Smallest distance of start and full point [kPa]: closer, the ramp is a switch. */
const apart_kPa = 2;

/** Start and full point on the curve, to drag or to nudge; moving one means setting by hand. */
export function FeedHandles({ spec, size, plan, sheet }: FeedHandlesProps) {
  const { screens, show } = useWords();
  const said = screens.plan;
  const { driven } = plan;
  const unit = show.units.boost;
  const panel = spec.panels[0];
  const box = panelBoxes(spec, size.height).panels[0];
  if (!panel || !box) return null;
  const flowAt = (boost: number) => {
    const { boost: at, delivered } = driven.overBoost;
    const i = at.findIndex((b) => b >= boost);
    return fromSi((i < 0 ? delivered.at(-1) : delivered[i]) ?? 0, show.units.volumeFlow);
  };
  const yPixel = (flow: number) => {
    const [low, high] = panel.y.range;
    return box.top + box.height * (1 - (flow - low) / (high - low));
  };
  const set = (which: 'start' | 'full', boost: number) => {
    const kPa = Math.round(boost) / 1e3;
    const start_kPa = which === 'start' ? Math.min(kPa, driven.full / 1e3 - apart_kPa) : driven.start / 1e3;
    const full_kPa = which === 'full' ? Math.max(kPa, driven.start / 1e3 + apart_kPa) : driven.full / 1e3;
    sheet.put('targets', {
      ...sheet.doc.targets,
      strategy: 'by-hand',
      start_kPa: Math.max(0, start_kPa),
      full_kPa,
    });
  };
  const points = [
    { which: 'start' as const, label: said.startHandle, boost: driven.start, flow: 0 },
    { which: 'full' as const, label: said.fullHandle, boost: driven.full, flow: flowAt(driven.full) },
  ];
  return points.map(({ which, label, boost, flow }) => (
    <ChartHandle
      key={which}
      label={label}
      text={show.quantity(boost, 'boost')}
      value={fromSi(boost, unit)}
      range={spec.x.range}
      left={pixelAt(spec, fromSi(boost, unit), size.width)}
      top={yPixel(flow)}
      valueAt={(pixel) => xAt(spec, pixel, size.width)}
      onChange={(value) => set(which, toSi(value, unit))}
    />
  ));
}
