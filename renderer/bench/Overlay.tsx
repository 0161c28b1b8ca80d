import { useMemo, useState } from 'react';
import type { PullCurve, VerdictWire } from '../../core/contract/index.ts';
import { comparisonChart, type SinglePull } from '../../core/handover/index.ts';
import { toSi } from '../../core/units/index.ts';
import { useShow, useView } from '../app/view.tsx';
import { Chart } from '../chart/Chart.tsx';
import { Button } from '../components/Button.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './Overlay.module.css';
import { PinnedPulls } from './PinnedPulls.tsx';
import { readout } from './readout.ts';
import type { PinnedPull } from './use-pinned.ts';

export type OverlayProps = {
  readonly curve: NonNullable<VerdictWire['curve']>;
  readonly labels: { readonly before: string; readonly after: string };
  /** Every pull, thin behind the means; empty where only the means are shown. */
  readonly pulls: readonly { readonly side: 'before' | 'after'; readonly curve: PullCurve }[];
  /** Chosen pulls of any entry, which stay while the two change. */
  readonly pinned: readonly PinnedPull[];
};

/** Before and after laid over each other, their difference below, and what the reading line reads. */
export function Overlay({ curve, labels, pulls, pinned }: OverlayProps) {
  const { screens, show } = useWords();
  const view = useView();
  const showView = useShow();
  const [cursor, setCursor] = useState<number | null>(null);
  const unit = show.units.engineSpeed;
  const spec = useMemo(
    () =>
      comparisonChart(curve, labels, show, [
        ...pulls.map((p): SinglePull => ({ side: p.side, ...p.curve })),
        ...pinned.map((p): SinglePull => ({ side: 'pinned', ...p.curve })),
      ]),
    [curve, labels, show, pulls, pinned],
  );
  const at = cursor === null ? null : toSi(cursor, unit);
  const read = at === null ? null : readout(curve, at, show);
  const speed = (value: number) => show.quantity(value, 'engineSpeed');
  return (
    <section className={styles.overlay} aria-label={screens.bench.overlay}>
      <div className={styles.readout}>
        {read ? (
          <>
            <span>{screens.bench.readAt(read.speed)}</span>
            <span className={styles.before}>{read.before}</span>
            <span className={styles.after}>{read.after}</span>
            <strong>{read.delta}</strong>
          </>
        ) : (
          view.band && (
            <>
              <span>{screens.bench.judgedOver(speed(view.band[0]), speed(view.band[1]))}</span>
              <Button look="plain" onPress={() => showView({ band: null })}>
                {screens.bench.wholeRange}
              </Button>
            </>
          )
        )}
      </div>
      <div className={styles.chart}>
        <Chart
          spec={spec}
          cursor={cursor}
          onCursor={setCursor}
          cursorText={read ? `${read.speed}: ${read.before}, ${read.after}, ${read.delta}` : ''}
          onZoom={([from, to]) => showView({ band: [toSi(from, unit), toSi(to, unit)] })}
        />
      </div>
      <PinnedPulls pinned={pinned} at={at} />
    </section>
  );
}
