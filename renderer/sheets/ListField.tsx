import { useState } from 'react';
import { readNumber } from '../../core/words/index.ts';
import { TextField } from '../components/TextField.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { FieldPath } from './field-specs.ts';
import { valueAt } from './sheet-doc.ts';
import type { Sheet } from './use-sheet.ts';

/** Several numbers in one line, apart by spaces. */
export function ListField({ path, sheet }: { path: FieldPath; sheet: Sheet }) {
  const { screens, show } = useWords();
  const [draft, setDraft] = useState<string | null>(null);
  const [isRefused, setRefused] = useState(false);
  const words = screens.sheet.fields[path];
  const value = valueAt(sheet.doc, path);
  const numbers = Array.isArray(value) ? value.filter((v): v is number => typeof v === 'number') : [];
  const text = numbers
    .map((n) => (show.language === 'de' ? String(n).replace('.', ',') : String(n)))
    .join(' ');
  const change = (next: string) => {
    setDraft(next);
    const read = next
      .split(/[\s;/]+/)
      .filter((part) => part !== '')
      .map((part) => readNumber(part, show.language));
    setRefused(read.includes(null) || !sheet.put(path, read));
  };
  return (
    <TextField
      isDense
      label={words.label}
      hint={words.hint || undefined}
      value={draft ?? text}
      onChange={change}
      onBlur={() => setDraft(null)}
      error={isRefused && draft !== null ? screens.sheet.outOfRange : undefined}
    />
  );
}
