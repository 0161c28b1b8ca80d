import { useDeferredValue, useMemo, useState } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { toSi } from '../../core/units/index.ts';
import { useShow, useView } from '../app/view.tsx';
import { withToggled } from '../bench/toggled.ts';
import { LinesChart } from '../chart/LinesChart.tsx';
import type { PlotWindow } from '../chart/plot-window.ts';
import { Segmented } from '../components/Segmented.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { aligned } from './aligned.ts';
import { ChannelPicker } from './ChannelPicker.tsx';
import { ChannelReadout } from './ChannelReadout.tsx';
import styles from './ChannelsTab.module.css';
import { type ChannelChoice, choicesOf, chosenOf, mostChannels } from './channel-choice.ts';
import { channelsChart, seenPart } from './channels-chart.ts';
import { PullPins } from './PullPins.tsx';
import { shownPulls } from './shown-pulls.ts';
import { type Side, useTraces } from './use-traces.ts';
import { WindowButtons } from './WindowButtons.tsx';

export type ChannelsTabProps = {
  readonly snapshot: Snapshot;
  readonly entries: readonly { readonly entry: Entry; readonly side: Exclude<Side, 'pinned'> }[];
};

/** Height of the plot for so many panels [px]: each as tall as two fingers, axis and title besides. */
const plotHeight = (panels: number) => 90 + 150 * Math.max(1, panels);

/** Any channel of the pulls on the bench, aligned, with one reading line and one window for all panels. */
export function ChannelsTab({ snapshot, entries }: ChannelsTabProps) {
  const { screens, show, quantity } = useWords();
  const view = useView();
  const showView = useShow();
  const { pinnedPulls } = view;
  const said = screens.channels;
  const [axis, setAxis] = useState(view.channelsAlong);
  const [kept, setKept] = useState(view.channels);
  const [cursor, setCursor] = useState<number | null>(null);
  const [window, setWindow] = useState<PlotWindow | null>(null);
  const ids = entries.map((e) => e.entry.id).join('>');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ids say which entries; the list is new each time
  const pulls = useMemo(() => shownPulls(snapshot, entries, pinnedPulls), [snapshot, ids, pinnedPulls]);
  const choices = useMemo(() => {
    const runIds = new Set(pulls.map((p) => p.pull.runId));
    return choicesOf(
      snapshot.runs.filter((r) => runIds.has(r.record.id)),
      snapshot.session.derivedChannels,
    );
  }, [snapshot, pulls]);
  const chosen = useMemo(() => chosenOf(choices, kept), [choices, kept]);
  // The buttons show the choice at once, the plot a moment later.
  const drawn = useDeferredValue(chosen);
  const along = useDeferredValue(axis);
  const shown = useMemo(
    () => drawn.flatMap((key) => choices.find((c) => c.key === key) ?? []),
    [drawn, choices],
  );
  const asked = useMemo(() => {
    const speed = choices.find((c) => c.quantity === 'engineSpeed');
    return speed && !shown.includes(speed) ? [...shown, speed] : shown;
  }, [choices, shown]);
  const traces = useTraces(snapshot, pulls, asked);
  const nameOf = useMemo(
    () => (c: ChannelChoice) => (c.quantity === null ? c.column : quantity(c.quantity)),
    [quantity],
  );
  const lines = useMemo(() => (traces ? aligned(traces, along) : []), [traces, along]);
  const spec = useMemo(
    () => channelsChart(shown, lines, along, { show, said, nameOf }),
    [shown, lines, along, show, said, nameOf],
  );
  const seen = useMemo(() => seenPart(spec, window, { show }), [spec, window, show]);
  // Dozens of buttons that a move of the reading line leaves as they are.
  const buttons = useMemo(
    () => (
      <>
        <ChannelPicker
          choices={choices}
          chosen={chosen}
          nameOf={nameOf}
          onChange={(keys) => {
            const channels = keys.slice(-mostChannels);
            setKept(channels);
            showView({ channels });
          }}
          onDerive={() => showView({ dialog: { type: 'derived' } })}
        />
        <PullPins
          pulls={pulls}
          pinned={pinnedPulls}
          onToggle={(id) => showView((now) => ({ pinnedPulls: withToggled(now.pinnedPulls, id) }))}
        />
      </>
    ),
    [choices, chosen, nameOf, showView, pulls, pinnedPulls],
  );
  if (pulls.length === 0) return <p className={styles.none}>{said.none}</p>;
  const [low, high] = seen.x.range;
  const x = cursor === null ? null : toSi(cursor, show.units[along]);
  const reach = toSi((high - low) / 60, show.units[along]);
  return (
    <div className={styles.channels}>
      <div className={styles.bar}>
        <Segmented
          label={said.along}
          isLabelHidden
          options={[
            { id: 'engineSpeed', label: said.alongSpeed },
            { id: 'time', label: said.alongTime },
          ]}
          value={axis}
          onChange={(id) => {
            setAxis(id);
            showView({ channelsAlong: id });
            setCursor(null);
            setWindow(null);
          }}
        />
        <WindowButtons
          seen={seen.x.range}
          whole={spec.x.range}
          isAll={window === null}
          onWindow={setWindow}
        />
      </div>
      {buttons}
      <ChannelReadout choices={shown} lines={lines} x={x} along={along} reach={reach} nameOf={nameOf} />
      <div style={{ height: plotHeight(shown.length) }} aria-busy={traces === null}>
        {traces === null ? (
          <p className={styles.none}>{said.busy}</p>
        ) : (
          <LinesChart
            spec={seen}
            whole={spec.x.range}
            cursor={cursor}
            cursorText={x === null ? '' : show.quantity(x, along)}
            onCursor={setCursor}
            onWindow={setWindow}
          />
        )}
      </div>
      <p className={styles.hint}>
        {said.readHint} {said.chooseHint(mostChannels)} {said.pinHint} {said.windowHint}
      </p>
    </div>
  );
}
