import { type PointerEvent, useRef } from 'react';
import styles from './ChartHandle.module.css';

export type ChartHandleProps = {
  readonly label: string;
  readonly text: string;
  readonly value: number;
  readonly range: readonly [number, number];
  readonly left: number;
  readonly top: number;
  readonly valueAt: (pixel: number) => number | null;
  readonly onChange: (value: number) => void;
};

/** A point of a plot that can be dragged along x; under it lies a range input, so that keys move it too. */
export function ChartHandle(props: ChartHandleProps) {
  const { label, text, value, range, left, top, valueAt, onChange } = props;
  const offset = useRef(0);
  const onMove = (event: PointerEvent<HTMLElement>) => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const plot = event.currentTarget.parentElement?.getBoundingClientRect();
    const next = plot ? valueAt(event.clientX - plot.left - offset.current) : null;
    if (next !== null) onChange(next);
  };
  return (
    <label
      className={styles.handle}
      style={{ left, top }}
      onPointerDown={(event) => {
        const plot = event.currentTarget.parentElement?.getBoundingClientRect();
        offset.current = plot ? event.clientX - plot.left - left : 0;
        event.currentTarget.setPointerCapture(event.pointerId);
        event.currentTarget.querySelector('input')?.focus();
        event.preventDefault();
      }}
      onPointerMove={onMove}
    >
      <input
        type="range"
        aria-label={label}
        aria-valuetext={text}
        min={Math.max(0, range[0])}
        max={range[1]}
        step={(range[1] - range[0]) / 200}
        value={value}
        onChange={(event) => onChange(Number(event.target.value))}
      />
      <span className={styles.dot} />
      <span className={styles.text}>
        {label} {text}
      </span>
    </label>
  );
}
