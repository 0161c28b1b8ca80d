import { TextField } from '../components/TextField.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { FieldPath } from './field-specs.ts';
import { valueAt } from './sheet-doc.ts';
import type { Sheet } from './use-sheet.ts';

export function SheetText({ path, sheet }: { path: FieldPath; sheet: Sheet }) {
  const { screens } = useWords();
  const words = screens.sheet.fields[path];
  const value = valueAt(sheet.doc, path);
  // The tyre is unknown where nothing is written; a name may be empty.
  const empty = path === 'car.tyre' ? null : '';
  return (
    <TextField
      label={words.label}
      hint={words.hint || undefined}
      value={typeof value === 'string' ? value : ''}
      onChange={(text) => sheet.put(path, text === '' ? empty : text)}
    />
  );
}
