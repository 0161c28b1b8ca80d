import { type KeyboardEvent, type PointerEvent, useState } from 'react';
import type { PullSummary } from '../../core/contract/index.ts';
import { quantities } from '../../core/log/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './TrimCurve.module.css';
import { coarseStep_s, movedEnd, nearestSample } from './trim-steps.ts';
import { type PullSpeed, usePullSpeed } from './use-pull-speed.ts';

export type TrimCurveProps = {
  readonly pull: PullSummary;
  /** Where the ends stand [s], on the log's own clock. */
  readonly ends: readonly [from_s: number, to_s: number];
  readonly onMove: (end: 0 | 1, at_s: number) => void;
};

/** Speed over time around a pull, its two ends to be moved by keys or pointer; nothing where the log has no speed. */
export function TrimCurve({ pull, ends, onMove }: TrimCurveProps) {
  const { speed, isBusy } = usePullSpeed(pull);
  if (isBusy) return <div className={styles.plot} aria-busy />;
  return speed && <SpeedCurve speed={speed} countedOn_s={pull.countedOn_s} ends={ends} onMove={onMove} />;
}

type SpeedCurveProps = Omit<TrimCurveProps, 'pull'> & {
  readonly speed: PullSpeed;
  readonly countedOn_s: number;
};

function SpeedCurve({ speed, countedOn_s, ends, onMove }: SpeedCurveProps) {
  const { screens, show, quantity } = useWords();
  const [held, setHeld] = useState<0 | 1 | null>(null);
  const said = screens.bench;
  const { time, values } = speed;
  const kind = quantities[speed.quantity];
  const [first, last] = [time[0] ?? 0, time[time.length - 1] ?? 0];
  const shareOf = (at_s: number) => 100 * Math.min(1, Math.max(0, (at_s - first) / (last - first)));
  const textOf = (at_s: number) => {
    const value = values[nearestSample(time, at_s)] ?? NaN;
    const moment = show.quantity(at_s - countedOn_s, 'time', 2);
    return Number.isFinite(value) ? said.trimAt(moment, show.quantity(value, kind)) : moment;
  };
  /** One end stays before the other. */
  const move = (end: 0 | 1, at_s: number) => {
    if (end === 0 ? at_s < ends[1] : at_s > ends[0]) onMove(end, at_s);
  };
  const byKey = (end: 0 | 1) => (event: KeyboardEvent) => {
    const direction = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key] as
      | 1
      | -1
      | undefined;
    if (direction === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    move(end, movedEnd(time, ends[end], direction, event.shiftKey));
  };
  const at = (event: PointerEvent) => {
    const box = event.currentTarget.getBoundingClientRect();
    const at_s = first + ((event.clientX - box.left) / box.width) * (last - first);
    return time[nearestSample(time, at_s)] ?? at_s;
  };
  const take = (event: PointerEvent) => {
    const at_s = at(event);
    const end = Math.abs(at_s - ends[0]) <= Math.abs(at_s - ends[1]) ? 0 : 1;
    event.currentTarget.setPointerCapture(event.pointerId);
    setHeld(end);
    move(end, at_s);
  };
  return (
    <figure className={styles.figure}>
      <figcaption className={styles.caption}>
        <span>{said.trimCurve(quantity(speed.quantity))}</span>
        <span>{said.trimKeys(show.quantity(coarseStep_s, 'time', 1))}</span>
      </figcaption>
      <div
        className={styles.plot}
        onPointerDown={take}
        onPointerMove={(event) => held !== null && move(held, at(event))}
        onPointerUp={() => setHeld(null)}
        onPointerCancel={() => setHeld(null)}
      >
        <svg className={styles.line} viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
          <path d={pathOf(time, values)} vectorEffect="non-scaling-stroke" />
        </svg>
        <div className={styles.off} style={{ left: 0, width: `${shareOf(ends[0])}%` }} />
        <div className={styles.off} style={{ left: `${shareOf(ends[1])}%`, right: 0 }} />
        {([0, 1] as const).map((end) => (
          <div key={end}>
            <input
              type="range"
              className={styles.keys}
              style={{ left: `${shareOf(ends[end])}%` }}
              aria-label={said.trimEnds[end]}
              aria-valuetext={textOf(ends[end])}
              aria-keyshortcuts="Shift+ArrowLeft Shift+ArrowRight"
              min={first}
              max={last}
              step="any"
              value={ends[end]}
              onChange={(event) => move(end, Number(event.target.value))}
              onKeyDown={byKey(end)}
            />
            <div className={styles.end} style={{ left: `${shareOf(ends[end])}%` }} />
          </div>
        ))}
      </div>
      <div className={styles.caption} aria-hidden="true">
        <span>{textOf(ends[0])}</span>
        <span>{textOf(ends[1])}</span>
      </div>
    </figure>
  );
}

/** The line in a box of 100 by 100, highest speed on top; a gap parts it. */
function pathOf(time: Float64Array, values: Float64Array): string {
  const known = values.filter(Number.isFinite);
  const [low, high] = [
    known.reduce((a, b) => Math.min(a, b), Infinity),
    known.reduce((a, b) => Math.max(a, b), -Infinity),
  ];
  const [first, last] = [time[0] ?? 0, time[time.length - 1] ?? 1];
  let path = '';
  let isDrawing = false;
  for (let i = 0; i < time.length; i++) {
    const value = values[i] ?? NaN;
    if (Number.isFinite(value)) {
      const x = (100 * ((time[i] ?? 0) - first)) / (last - first);
      const y = 100 * (1 - (value - low) / (high - low || 1));
      path += `${isDrawing ? 'L' : 'M'}${Number(x.toFixed(3))} ${Number(y.toFixed(2))}`;
    }
    isDrawing = Number.isFinite(value);
  }
  return path;
}
