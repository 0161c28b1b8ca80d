import type { Session } from '../../core/session/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { Select } from '../components/Select.tsx';
import { ChangeFields } from '../entry/ChangeFields.tsx';
import type { ChangeDraft } from '../entry/change-draft.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './AssignFields.module.css';
import { newChange, noEntry, type Target } from './assign-files.ts';

export type AssignFieldsProps = {
  readonly logs: readonly { readonly key: string; readonly name: string }[];
  readonly ledger: Session['ledger'];
  readonly targets: readonly Target[];
  readonly onTargets: (targets: Target[]) => void;
  readonly draft: ChangeDraft;
  readonly onDraft: (draft: ChangeDraft) => void;
  /** What no entry means here. */
  readonly noneLabel: string;
};

/** Which log belongs to which entry, and what was changed where one of them starts a new one. */
export function AssignFields(props: AssignFieldsProps) {
  const { logs, ledger, targets, onTargets, draft, onDraft, noneLabel } = props;
  const { screens, show } = useWords();
  const said = screens.importing;
  const options = [
    ...ledger.map((e, i) => ({ id: e.id, label: `${i} ${entryTitle(e, show)}` })),
    { id: newChange, label: said.toNew },
    { id: noEntry, label: noneLabel },
  ];
  return (
    <>
      <ul className={styles.files}>
        {logs.map((log, i) => (
          <li key={log.key} className={styles.file}>
            <span className={styles.name}>{log.name}</span>
            <Select
              label={`${said.entry}: ${log.name}`}
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
