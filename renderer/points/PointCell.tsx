import { type ClipboardEvent, useState } from 'react';
import { asRead } from '../../core/units/index.ts';
import { readNumber } from '../../core/words/index.ts';
import field from '../components/Field.module.css';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './PointList.module.css';

export type PointCellProps = {
  readonly label: string;
  /** In the unit that the column shows. */
  readonly value: number | null;
  readonly unit: string;
  readonly onChange: (value: number | null) => void;
  /** True where the text was more than one cell and has been taken. */
  readonly onPasteCells: (text: string) => boolean;
};

/** One number of a list of points. */
export function PointCell({ label, value, unit, onChange, onPasteCells }: PointCellProps) {
  const { show } = useWords();
  const [draft, setDraft] = useState<string | null>(null);
  const shown = value === null ? '' : String(asRead(value, unit));
  const text = draft ?? (show.language === 'de' ? shown.replace('.', ',') : shown);
  const isWrong = draft !== null && draft.trim() !== '' && readNumber(draft, show.language) === null;
  const paste = (event: ClipboardEvent<HTMLInputElement>) => {
    const pasted = event.clipboardData.getData('text');
    if (/[\t\n;]/.test(pasted.trim()) && onPasteCells(pasted)) {
      event.preventDefault();
      setDraft(null);
    }
  };
  return (
    <input
      className={cx(field.input, styles.cell)}
      inputMode="decimal"
      autoComplete="off"
      aria-label={label}
      aria-invalid={isWrong}
      value={text}
      onChange={(event) => {
        const next = event.target.value;
        setDraft(next);
        const number = readNumber(next, show.language);
        if (next.trim() === '') onChange(null);
        else if (number !== null) onChange(number);
      }}
      onBlur={() => setDraft(null)}
      onPaste={paste}
    />
  );
}
