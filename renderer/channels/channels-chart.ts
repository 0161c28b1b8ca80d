import { axisOver, type ChartLine, type ChartSpec, spanOf } from '../../core/handover/index.ts';
import { fromSi } from '../../core/units/index.ts';
import type { ScreenWords, Show } from '../../core/words/index.ts';
import type { Aligned } from './aligned.ts';
import type { ChannelChoice } from './channel-choice.ts';
import type { Side } from './use-traces.ts';

export type ChannelsWords = {
  readonly show: Show;
  readonly said: ScreenWords['channels'];
  readonly nameOf: (choice: ChannelChoice) => string;
};

/** A value of a channel in the reader's unit; an unknown column stands as in its file. */
export function shownValue({ kind }: Pick<ChannelChoice, 'kind'>, value: number, show: Show): number {
  if (kind === null) return value;
  if (kind === 'lambda' && show.units.gaugeScale !== null) return value * show.units.gaugeScale;
  return fromSi(value, show.units[kind]);
}

const marksOf: Readonly<Record<Side, Pick<ChartLine, 'ink' | 'dash'>>> = {
  before: { ink: 'before', dash: 'dashed' },
  after: { ink: 'after', dash: 'solid' },
  pinned: { ink: 'soft', dash: 'dotted' },
};

/** The part of the common axis that is shown, with ticks of its own. */
export function seenPart(
  spec: ChartSpec,
  window: readonly [number, number] | null,
  { show }: Pick<ChannelsWords, 'show'>,
): ChartSpec {
  if (window === null) return spec;
  const text = (value: number, digits: number) => show.number(value, digits);
  return { ...spec, x: axisOver(window, { title: spec.x.title, most: 9, room: 0, text }) };
}

/** One panel a channel on one common axis; every pull a line, before dashed, after solid, pinned dotted. */
export function channelsChart(
  choices: readonly ChannelChoice[],
  pulls: readonly Aligned[],
  along: 'time' | 'engineSpeed',
  { show, said, nameOf }: ChannelsWords,
): ChartSpec {
  const text = (value: number, digits: number) => show.number(value, digits);
  const xUnit = show.units[along];
  const panels = choices.map((choice) => {
    const marks = pulls
      .filter((p) => p.key === choice.key)
      .map((pull): ChartLine => {
        const kept = Array.from(pull.x.keys()).filter((i) => Number.isFinite(pull.x[i] as number));
        return {
          kind: 'line',
          ...marksOf[pull.side],
          weight: 'thin',
          x: kept.map((i) => fromSi(pull.x[i] as number, xUnit)),
          y: kept.map((i) => {
            const value = pull.values[i] as number;
            return Number.isFinite(value) ? shownValue(choice, value, show) : null;
          }),
          label: '',
          labelSide: 'above',
        };
      });
    const unit = choice.kind === null ? '' : show.unit(choice.kind);
    return {
      id: choice.key,
      share: 1 / choices.length,
      y: axisOver(spanOf(...marks.map((m) => m.y)), {
        title: unit === '' ? nameOf(choice) : `${nameOf(choice)}, ${unit}`,
        most: 4,
        room: 0.08,
        text,
      }),
      marks,
    };
  });
  const pullCount = new Set(pulls.map((p) => p.pullId)).size;
  return {
    description: said.describe(choices.map(nameOf).join(', '), pullCount),
    x: axisOver(spanOf(...panels.flatMap((p) => p.marks.map((m) => m.x))), {
      title: `${along === 'time' ? said.time : said.alongSpeed}, ${show.unit(along)}`,
      most: 9,
      // The ends of the longest pull are the ends of the axis, so that a line moved there reads something.
      room: 0,
      text,
    }),
    panels,
    spans: null,
  };
}
