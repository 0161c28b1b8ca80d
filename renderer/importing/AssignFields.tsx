import type { Session } from '../../core/session/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { Select } from '../components/Select.tsx';
import { ChangeFields } from '../entry/ChangeFields.tsx';
import type { ChangeDraft } from '../entry/change-draft.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './AssignFields.module.css';
import { newChange, noEntry, type Target } from './assign-files.ts';
import { type Incoming, keyOf } from './incoming.ts';

export type AssignFieldsProps = {
  readonly files: readonly Incoming[];
  readonly ledger: Session['ledger'];
  readonly targets: readonly Target[];
  readonly onTargets: (targets: Target[]) => void;
  readonly draft: ChangeDraft;
  readonly onDraft: (draft: ChangeDraft) => void;
};

/** Which log belongs to which entry, and what was changed where one of them starts a new one. */
export function AssignFields({ files, ledger, targets, onTargets, draft, onDraft }: AssignFieldsProps) {
  const { screens, show } = useWords();
  const said = screens.importing;
  const options = [
    ...ledger.map((e, i) => ({ id: e.id, label: `${i} ${entryTitle(e, show)}` })),
    { id: newChange, label: said.toNew },
    { id: noEntry, label: said.toNone },
  ];
  return (
    <>
      <ul className={styles.files}>
        {files.map((file, i) => (
          <li key={keyOf(file)} className={styles.file}>
            <span className={styles.name}>{file.name}</span>
            <Select
              label={`${said.entry}: ${file.name}`}
              isLabelHidden
              options={options}
              value={targets[i] ?? noEntry}
              onChange={(target) => onTargets(targets.map((t, at) => (at === i ? target : t)))}
            />
          </li>
        ))}
      </ul>
      {targets.includes(newChange) && (
        <section className={styles.change}>
          <h3>{screens.entry.addTitle}</h3>
          <ChangeFields draft={draft} onChange={onDraft} />
        </section>
      )}
    </>
  );
}
