import { useState } from 'react';
import { readDate } from '../../core/words/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import { TextField } from './TextField.tsx';

export type DateFieldProps = {
  readonly label: string;
  /** `2027-03-14` */
  readonly value: string;
  /** Only with a day that there is. */
  readonly onChange: (day: string) => void;
};

/** A day in the reader's language; the browser's own field follows the language of the system. */
export function DateField({ label, value, onChange }: DateFieldProps) {
  const { show, screens } = useWords();
  const [draft, setDraft] = useState<string | null>(null);
  const isWrong = draft !== null && readDate(draft, show.language) === null;
  return (
    <TextField
      label={label}
      value={draft ?? show.date(value)}
      onChange={(text) => {
        setDraft(text);
        const day = readDate(text, show.language);
        if (day !== null) onChange(day);
      }}
      onBlur={() => setDraft(null)}
      error={isWrong ? screens.units.notADay : undefined}
    />
  );
}
