import styles from './TableGrid.module.css';

export type TracePath = readonly { readonly row: number; readonly column: number }[];

export type TraceOverlayProps = {
  readonly paths: readonly TracePath[];
  readonly left: number;
  readonly top: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  readonly rows: number;
  readonly columns: number;
};

/** Where the pulls went, through the middles of the cells; what they say in words stands above the table. */
export function TraceOverlay(props: TraceOverlayProps) {
  const { paths, left, top, cellWidth, cellHeight, rows, columns } = props;
  const points = (path: TracePath) =>
    path
      .filter((p) => Number.isFinite(p.row) && Number.isFinite(p.column))
      .map((p) => `${((p.column + 0.5) * cellWidth).toFixed(1)},${((p.row + 0.5) * cellHeight).toFixed(1)}`)
      .join(' ');
  const lines = paths.map(points).filter((line) => line !== '');
  if (lines.length === 0) return null;
  return (
    <svg
      className={styles.trace}
      aria-hidden
      style={{ left, top }}
      width={columns * cellWidth}
      height={rows * cellHeight}
    >
      {lines.map((line) => (
        <polyline key={`halo ${line}`} className={styles.halo} points={line} />
      ))}
      {lines.map((line) => (
        <polyline key={line} className={styles.line} points={line} />
      ))}
    </svg>
  );
}
