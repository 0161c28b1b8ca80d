import { comparisonChart } from '../comparison-chart.ts';
import { torqueChart } from '../torque-chart.ts';
import type { HandoverDocument, KeyFigure, Section } from './handover-document.ts';
import type { Teller } from './teller.ts';

/** What the day brought, in one sentence with its interval. */
export function headlineOf({ facts, show, words, source }: Teller): HandoverDocument['headline'] {
  const { result } = facts;
  if (!result) return { text: words.wholeNone, tone: 'none', means: '' };
  const [low, high] = result.interval95_kW.map((kW) => kW * 1e3) as [number, number];
  const effect = result.effect_kW * 1e3;
  const size = show.quantity(Math.abs(effect), 'power');
  const means = words.wholeMeans;
  // With something else that stood otherwise, the ink claims as little as the chart's.
  const tone = (proven: 'gain' | 'loss') => ((source.whole?.doubts.length ?? 0) > 0 ? 'doubt' : proven);
  const [bare, full] = [(v: number) => show.bare(v, 'power'), (v: number) => show.quantity(v, 'power')];
  if (low > 0) return { text: words.gained(size, bare(low), full(high)), tone: tone('gain'), means };
  if (high < 0) return { text: words.lost(size, bare(-high), full(-low)), tone: tone('loss'), means };
  const signed = (v: number) => show.difference(v, 'power');
  return { text: words.noDifference(signed(effect), signed(low), signed(high)), tone: 'doubt', means };
}

/** The effect of all changes and the peaks, large under the headline. */
export function keyFigures({ facts, show, words, value }: Teller): KeyFigure[] {
  const { result } = facts;
  if (!result) return [];
  const [low, high] = result.interval95_kW;
  const figures: KeyFigure[] = [
    {
      label: words.effectOfAll,
      value: show.difference(result.effect_kW * 1e3, 'power'),
      more: `${words.intervalOf(show.difference(low * 1e3, 'power'), show.difference(high * 1e3, 'power'))}; ${words.inText(words.wheelPower)}`,
    },
  ];
  const add = (
    label: string,
    unit: 'kW' | 'Nm',
    kind: 'power' | 'torque',
    { before, after }: typeof result.peakPower_kW,
  ) => {
    if (!before || !after) return;
    const speed = (rpm: number) => value(Math.round(rpm / 50) * 50, 'rpm', 'engineSpeed') ?? '';
    figures.push({
      label,
      value: value(after.value, unit, kind) ?? '',
      more: `${words.at('', speed(after.engineSpeed_rpm)).trim()}; ${words.wasBefore(
        words.at(value(before.value, unit, kind) ?? '', speed(before.engineSpeed_rpm)),
      )}`,
    });
  };
  add(words.peakPower, 'kW', 'power', result.peakPower_kW);
  add(words.peakTorque, 'Nm', 'torque', result.peakTorque_Nm);
  return figures;
}

/** The curves before and after, with their bands and their difference. */
export function chartSection(
  { source, show, words, facts }: Teller,
  look: Pick<HandoverDocument, 'form' | 'paper'>,
): Section {
  const curve = source.whole?.curve ?? null;
  const numbers = facts.result;
  if (!curve || !numbers)
    return { id: 'power', title: words.powerChart, blocks: [{ kind: 'text', text: words.noChart }] };
  // So that both charts stay on the first sheet; Letter is 18 mm shorter.
  const heights = look.paper === 'A4' ? { power: 300, torque: 180 } : { power: 262, torque: 146 };
  const labels = {
    before: `${numbers.fromEntry} · ${words.before}`,
    after: `${numbers.toEntry} · ${words.after}`,
  };
  const power = {
    kind: 'chart',
    id: 'power',
    chart: comparisonChart(curve, labels, show),
    height: heights.power,
    caption: '',
  } as const;
  const torque = {
    kind: 'chart',
    id: 'torque',
    chart: torqueChart(curve, labels, show),
    height: heights.torque,
    caption: curve.proven.length > 0 ? `${words.chartReading} ${words.provenReading}` : words.chartReading,
  } as const;
  if (look.form === 'one-page') {
    const [first] = power.chart.panels;
    // The table beside it holds the differences; half a sheet has room for the curves alone.
    const x = { ...power.chart.x, ticks: power.chart.x.ticks.filter((_, i) => i % 2 === 0) };
    const chart = { ...power.chart, x, panels: first ? [{ ...first, share: 1 }] : [], spans: null };
    const block = { ...power, chart, height: look.paper === 'A4' ? 245 : 225, width: 370 };
    return { id: 'power', title: words.powerChart, isHalf: true, blocks: [block] };
  }
  return {
    id: 'power',
    title: words.powerChart,
    blocks: [power, torque],
  };
}
