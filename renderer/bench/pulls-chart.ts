import type { OnePullBandWire, PullCurve } from '../../core/contract/index.ts';
import {
  axisOver,
  type ChartBand,
  type ChartLine,
  type ChartSpec,
  spanOf,
} from '../../core/handover/index.ts';
import { fromSi, type ShownKind } from '../../core/units/index.ts';
import { type Show, screenWords } from '../../core/words/index.ts';

/**
 * Every pull of one entry over engine speed, thin, none above the other, with the band that one of them may be off
 * by; pinned pulls of any entry dotted.
 */
export function pullsChart(
  pulls: readonly PullCurve[],
  show: Show,
  pinned: readonly PullCurve[] = [],
  band: OnePullBandWire | null = null,
): ChartSpec {
  const said = screenWords(show.language).bench;
  const shown = (values: readonly (number | null)[], kind: ShownKind) =>
    values.map((v) => (v === null ? null : fromSi(v, show.units[kind])));
  const lineOf = (pull: PullCurve, isPinned: boolean): ChartLine => ({
    kind: 'line',
    ink: isPinned ? 'ink' : 'after',
    dash: isPinned ? 'dotted' : 'solid',
    weight: isPinned || pulls.length === 1 ? 'main' : 'thin',
    x: shown(pull.engineSpeed_rad_s, 'engineSpeed').map((v) => v ?? 0),
    y: shown(pull.wheelPower, 'power'),
    label: '',
    labelSide: 'above',
  });
  const lines = [...pulls.map((p) => lineOf(p, false)), ...pinned.map((p) => lineOf(p, true))];
  const bands: readonly ChartBand[] = band
    ? [
        {
          kind: 'band',
          ink: 'after',
          x: shown(band.engineSpeed_rad_s, 'engineSpeed').map((v) => v ?? 0),
          low: shown(band.low, 'power'),
          high: shown(band.high, 'power'),
        },
      ]
    : [];
  const text = (value: number, digits: number) => show.number(value, digits);
  return {
    description: said.describeOne(String(pulls.length)),
    x: axisOver(spanOf(...lines.map((l) => l.x)), {
      title: `${said.engineSpeed}, ${show.unit('engineSpeed')}`,
      most: 9,
      room: 0.02,
      text,
    }),
    panels: [
      {
        id: 'power',
        share: 1,
        y: axisOver(spanOf(...lines.map((l) => l.y), ...bands.flatMap((b) => [b.low, b.high])), {
          title: band
            ? `${said.wheelPower}, ${show.unit('power')}, ${said.onePullBand}`
            : `${said.wheelPower}, ${show.unit('power')}`,
          most: 7,
          room: 0.08,
          text,
        }),
        marks: [...bands, ...lines],
      },
    ],
    spans: null,
  };
}
