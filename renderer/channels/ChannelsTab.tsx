import { useMemo, useState } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { toSi } from '../../core/units/index.ts';
import { useView } from '../app/view.tsx';
import { pullsOf } from '../bench/PullsTable.tsx';
import { Chart } from '../chart/Chart.tsx';
import { Button } from '../components/Button.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { aligned } from './aligned.ts';
import { ChannelPicker } from './ChannelPicker.tsx';
import { ChannelReadout } from './ChannelReadout.tsx';
import styles from './ChannelsTab.module.css';
import { type ChannelChoice, choicesOf, firstChoice, mostChannels } from './channel-choice.ts';
import { channelsChart } from './channels-chart.ts';
import { type Side, useTraces } from './use-traces.ts';

export type ChannelsTabProps = {
  readonly snapshot: Snapshot;
  readonly entries: readonly { readonly entry: Entry; readonly side: Side }[];
};

/** Height of the plot for so many panels [px]: each as tall as two fingers, axis and title besides. */
const plotHeight = (panels: number) => 90 + 150 * Math.max(1, panels);

/** Any channel of the pulls on the bench, aligned, with one reading line through all panels. */
export function ChannelsTab({ snapshot, entries }: ChannelsTabProps) {
  const { screens, show, quantity } = useWords();
  const { show: showView } = useView();
  const said = screens.channels;
  const [along, setAlong] = useState<'engineSpeed' | 'time'>('engineSpeed');
  const [cursor, setCursor] = useState<number | null>(null);
  const ids = entries.map((e) => e.entry.id).join('>');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ids say which entries; the list is new each time
  const pulls = useMemo(
    () =>
      entries.flatMap(({ entry, side }) =>
        pullsOf(snapshot, entry)
          .filter(({ pull }) => pull.counts)
          .map(({ pull }) => ({ pull, side })),
      ),
    [snapshot, ids],
  );
  const choices = useMemo(() => {
    const runIds = new Set(pulls.map((p) => p.pull.runId));
    return choicesOf(snapshot.runs.filter((r) => runIds.has(r.record.id)));
  }, [snapshot, pulls]);
  const [chosen, setChosen] = useState<readonly string[]>(() => firstChoice(choices));
  const shown = useMemo(
    () => chosen.flatMap((key) => choices.find((c) => c.key === key) ?? []),
    [chosen, choices],
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
  if (pulls.length === 0) return <p className={styles.none}>{said.none}</p>;
  const [low, high] = spec.x.range;
  const x = cursor === null ? null : toSi(cursor, show.units[along]);
  const reach = toSi((high - low) / 60, show.units[along]);
  return (
    <div className={styles.channels}>
      <div className={styles.bar}>
        <Segmented
          label={said.along}
          options={[
            { id: 'engineSpeed', label: said.alongSpeed },
            { id: 'time', label: said.alongTime },
          ]}
          value={along}
          onChange={(id) => {
            setAlong(id);
            setCursor(null);
          }}
        />
        <Button onPress={() => showView({ dialog: { type: 'derived' } })}>{said.derived}</Button>
      </div>
      <ChannelPicker
        choices={choices}
        chosen={chosen}
        nameOf={nameOf}
        onChange={(keys) => setChosen(keys.slice(-mostChannels))}
      />
      <ChannelReadout choices={shown} lines={lines} x={x} along={along} reach={reach} nameOf={nameOf} />
      <div style={{ height: plotHeight(shown.length) }} aria-busy={traces === null}>
        {traces === null ? (
          <p className={styles.none}>{said.busy}</p>
        ) : (
          <Chart
            spec={spec}
            cursor={cursor}
            onCursor={setCursor}
            cursorText={x === null ? '' : show.quantity(x, along)}
          />
        )}
      </div>
    </div>
  );
}
