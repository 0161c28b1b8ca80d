import { Select } from '../components/Select.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { FieldSpec } from './field-specs.ts';
import { valueAt } from './sheet-doc.ts';
import type { Sheet } from './use-sheet.ts';

/** Nothing chosen yet; a session says so with null. */
const open = '';
/** Fields that always hold something: their default is a choice like any other. */
const alwaysSet = new Set([
  'car.correction',
  'fluidSystem.mix.by',
  'fluidSystem.metering',
  'fluidSystem.input',
  'fluidSystem.pump.control',
  'fluidSystem.pump.reference',
]);

export type ChoiceFieldProps = {
  readonly spec: Extract<FieldSpec, { type: 'choice' | 'yes-no' }>;
  readonly sheet: Sheet;
};

export function ChoiceField({ spec, sheet }: ChoiceFieldProps) {
  const { screens } = useWords();
  const said = screens.sheet;
  const value = valueAt(sheet.doc, spec.path);
  const words = said.fields[spec.path];
  const choices =
    spec.type === 'choice'
      ? Object.entries(said.options[spec.path]).map(([id, label]) => ({ id, label: String(label) }))
      : [
          { id: 'true', label: said.yes },
          { id: 'false', label: said.no },
        ];
  const openMeans: Record<string, string | undefined> = said.openMeans;
  const options = alwaysSet.has(spec.path)
    ? choices
    : [{ id: open, label: openMeans[spec.path] ?? said.open }, ...choices];
  const put = (id: string) => {
    const next = id === open ? null : spec.type === 'yes-no' ? id === 'true' : id;
    sheet.put(spec.path, next);
  };
  return (
    <Select
      label={words.label}
      options={options}
      value={value === null || value === undefined ? open : String(value)}
      onChange={put}
      hint={words.hint || undefined}
    />
  );
}
