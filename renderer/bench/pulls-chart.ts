import type { PullCurve } from '../../core/contract/index.ts';
import { axisOver, type ChartLine, type ChartSpec, spanOf } from '../../core/handover/index.ts';
import { fromSi, type ShownKind } from '../../core/units/index.ts';
import { type Show, screenWords } from '../../core/words/index.ts';

/** Every pull of one entry over engine speed, thin, none above the other; pinned pulls of any entry dotted. */
export function pullsChart(
  pulls: readonly PullCurve[],
  show: Show,
  pinned: readonly PullCurve[] = [],
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
        y: axisOver(spanOf(...lines.map((l) => l.y)), {
          title: `${said.wheelPower}, ${show.unit('power')}`,
          most: 7,
          room: 0.08,
          text,
        }),
        marks: lines,
      },
    ],
    spans: null,
  };
}
