import { changeKinds } from '../../core/compare/index.ts';
import type { EntryKind } from '../../core/session/index.ts';
import type { ShownKind } from '../../core/units/index.ts';
import { entryKindWord, entryTitle, quantityOfChange } from '../../core/words/index.ts';
import { QuantityField } from '../components/QuantityField.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { TextField } from '../components/TextField.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './ChangeFields.module.css';
import { type ChangeDraft, entryPartOf } from './change-draft.ts';

export type ChangeFieldsProps = {
  readonly draft: ChangeDraft;
  readonly onChange: (draft: ChangeDraft) => void;
};

const steps: Partial<Record<ShownKind, number>> = { boost: 0.05, angle: 0.5, lambda: 0.01, share: 1 };

/** What was changed: the kind, from, to, where; below, how the ledger will call it. */
export function ChangeFields({ draft, onChange }: ChangeFieldsProps) {
  const { screens, show } = useWords();
  const said = screens.entry;
  const set = (patch: Partial<ChangeDraft>) => onChange({ ...draft, ...patch });
  const quantity = quantityOfChange(draft.kind);
  const isBaseline = draft.kind === 'baseline';
  const step = quantity ? (steps[quantity] ?? 1) : 1;
  return (
    <div className={styles.fields}>
      {!isBaseline && (
        <Segmented<EntryKind>
          label={said.kind}
          options={changeKinds.map((id) => ({ id, label: entryKindWord(id, show) }))}
          value={draft.kind}
          onChange={(kind) => set({ kind, from: null, to: null, table: null })}
        />
      )}
      {quantity && (
        <div className={styles.pair} key={draft.kind}>
          <QuantityField
            label={said.from}
            hint={draft.kind === 'spark' ? said.sparkFromHint : undefined}
            kind={quantity}
            value={draft.from}
            onChange={(from) => set({ from })}
            step={step}
          />
          <QuantityField
            label={said.to}
            kind={quantity}
            value={draft.to}
            onChange={(to) => set({ to })}
            step={step}
          />
        </div>
      )}
      <div className={styles.pair}>
        {!isBaseline && (
          <TextField
            label={said.where}
            hint={said.whereHint}
            value={draft.where}
            onChange={(where) => set({ where })}
            maxLength={200}
          />
        )}
        <TextField
          label={said.title}
          placeholder={entryTitle({ ...entryPartOf(draft), title: '' }, show)}
          hint={said.titleHint}
          value={draft.title}
          onChange={(title) => set({ title })}
          maxLength={200}
        />
      </div>
    </div>
  );
}
