import { useEffect, useRef } from 'react';
import type { SessionTable } from '../../core/session/index.ts';
import type { EcuTable } from '../../core/tables/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import { placeText } from './cell-text.ts';
import type { Cell } from './grid-keys.ts';
import { heatColour } from './heat-share.ts';
import styles from './Tables.module.css';

export type ReadoutProps = {
  readonly table: SessionTable;
  readonly now: EcuTable;
  readonly cell: Cell;
  readonly value: string;
  readonly was: string | null;
  /** What is being typed into the chosen cells; null where nothing is. */
  readonly typing: string | null;
  readonly onTyping: (text: string | null) => void;
  readonly onEnter: (text: string) => void;
  readonly pulls: number;
  readonly isDifference: boolean;
};

/** The cell under the cursor in words, the field for a new value, and the scale of the colours. */
export function Readout(props: ReadoutProps) {
  const { table, now, cell, value, was, typing, onTyping, onEnter, pulls, isDifference } = props;
  const { screens, show } = useWords();
  const said = screens.tables;
  const field = useRef<HTMLInputElement>(null);
  const isTyping = typing !== null;
  useEffect(() => {
    if (isTyping) field.current?.focus();
  }, [isTyping]);
  const backToGrid = () =>
    document.querySelector<HTMLElement>(`[data-cell="${cell.row},${cell.column}"]`)?.focus();
  const place = placeText(
    table.axes,
    now.across[cell.column] ?? Number.NaN,
    now.down[cell.row] ?? Number.NaN,
    show,
  );
  const stops = isDifference
    ? ([
        { ink: 'before', share: 1 },
        { ink: 'after', share: 0 },
        { ink: 'after', share: 1 },
      ] as const)
    : ([
        { ink: 'after', share: 0 },
        { ink: 'after', share: 1 },
      ] as const);
  return (
    <div className={styles.readout}>
      <p>
        {said.at(place.speed, place.load)}
        <strong>{value}</strong>
        {was !== null && said.was(was)}
      </p>
      {isTyping && (
        <label className={styles.typed}>
          {said.inCell}
          <input
            ref={field}
            value={typing}
            inputMode="decimal"
            autoComplete="off"
            onChange={(event) => onTyping(event.target.value)}
            onBlur={() => onTyping(null)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' && event.key !== 'Escape') return;
              event.preventDefault();
              backToGrid();
              if (event.key === 'Enter') onEnter(typing);
            }}
          />
        </label>
      )}
      {pulls > 0 && <span className={styles.soft}>{said.traceOf(pulls)}</span>}
      <span className={styles.scale}>
        {isDifference ? said.lower : said.low}
        <span
          className={styles.ramp}
          style={{ backgroundImage: `linear-gradient(90deg, ${stops.map(heatColour).join(', ')})` }}
        />
        {isDifference ? said.higher : said.high}
      </span>
    </div>
  );
}
