import { useDeferredValue, useMemo, useState } from 'react';
import { Checkbox } from 'react-aria-components';
import type { RunSummary } from '../../core/contract/index.ts';
import { fileColumns, quantityIds, withCorrections } from '../../core/log/index.ts';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import table from '../components/Table.module.css';
import { cx } from '../design/cx.ts';
import { useLongList } from '../hooks/use-long-list.ts';
import { usePreferences } from '../hooks/use-preferences.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { ColumnRow, nothing } from './ColumnRow.tsx';
import styles from './ColumnsDialog.module.css';
import { KeptCorrections } from './KeptCorrections.tsx';
import { alikeRuns, type MappingDraft, mappingEdits, meaningOf, shownColumns } from './mapping-draft.ts';
import { usePreview } from './use-preview.ts';

/** How the columns of a log were read, and the way to correct that once. */
export function ColumnsDialog({ runId, onClose }: { runId: string; onClose: () => void }) {
  const { snapshot } = useSession();
  const run = snapshot?.runs.find((r) => r.record.id === runId);
  if (!snapshot || !run) return null;
  return <OpenColumns run={run} runs={snapshot.runs} revision={snapshot.revision} onClose={onClose} />;
}

type OpenColumnsProps = {
  readonly run: RunSummary;
  readonly runs: readonly RunSummary[];
  readonly revision: number;
  readonly onClose: () => void;
};

const none: ReturnType<typeof shownColumns> = [];

function OpenColumns({ run, runs, revision, onClose }: OpenColumnsProps) {
  const { screens, show, quantity } = useWords();
  const { edit } = useSession();
  const said = screens.columns;
  const [draft, setDraft] = useState<MappingDraft>({});
  const [isForAll, setForAll] = useState(false);
  const [isForLater, setForLater] = useState(true);
  const { preferences, set } = usePreferences();
  const offered = useMemo(() => {
    const inOrder = new Intl.Collator(show.language).compare;
    const named = quantityIds.map((id) => ({ id, label: quantity(id) }));
    return [
      { id: nothing, label: said.nothing } as const,
      ...named.sort((a, b) => inOrder(a.label, b.label)),
    ];
  }, [said, show, quantity]);
  // The dialog stands first, its rows a frame later: a log has dozens of columns with two lists each.
  const columns = useDeferredValue(
    useMemo(() => shownColumns(run), [run]),
    none,
  );
  const long = useLongList<HTMLTableElement>({ count: columns.length, rowHeight_px: 53 });
  const { isLong, parts, active, listProps, rowProps } = long;
  const inSight = parts.flatMap((part) => (part.kind === 'row' ? [part.index] : []));
  const preview = usePreview(run, revision, isLong ? (inSight[inSight.length >> 1] ?? 0) : 0);
  // Where only a part of the rows is drawn, the table says how many there are, and its rows take the focus.
  const grid = isLong ? { role: 'grid', 'aria-rowcount': columns.length + 1 } : {};
  const propsOf = (index: number) => ({
    ...rowProps(index),
    ...(isLong && { 'aria-rowindex': index + 2, tabIndex: index === active ? 0 : -1 }),
  });
  const alike = alikeRuns(runs, run);
  const { toasts, dismiss } = useToasts();
  // What was said of the log as it was found is put right now; what is still wrong stands beside the logs.
  const dismissOld = () => {
    for (const { id, problems } of toasts)
      if (problems.length > 0 && problems.every((p) => p.where?.file === run.record.name)) dismiss(id);
  };
  const save = async () => {
    const targets = isForAll ? [run, ...alike] : [run];
    if (!(await edit(mappingEdits(targets, draft)))) return;
    dismissOld();
    if (isForLater) {
      const columnProfiles = withCorrections(
        preferences.columnProfiles,
        fileColumns(run.columns),
        Object.values(draft),
      );
      set({ columnProfiles });
    }
    onClose();
  };
  const isCorrected = Object.keys(draft).length > 0;
  return (
    <Dialog
      title={said.title(run.record.name)}
      onClose={onClose}
      isUnsaved={isCorrected}
      shape="widest"
      problems={run.problems}
      actions={
        <>
          <Button look="main" onPress={save} isDisabled={!isCorrected}>
            {said.save}
          </Button>
          <CancelButton />
          <div className={styles.reach}>
            {alike.length > 0 && (
              <Checkbox isSelected={isForAll} onChange={setForAll} className={cx(styles.forAll)}>
                <span className={styles.box} aria-hidden />
                {said.alike(alike.length)}
              </Checkbox>
            )}
            <Checkbox isSelected={isForLater} onChange={setForLater} className={cx(styles.forAll)}>
              <span className={styles.box} aria-hidden />
              {said.later}
            </Checkbox>
          </div>
        </>
      }
    >
      <p>{said.intro}</p>
      <KeptCorrections columns={fileColumns(run.columns)} />
      {preview.problems && <ProblemList problems={preview.problems} />}
      <table className={table.table} {...grid} {...listProps}>
        <thead>
          <tr>
            <th scope="col">{said.column}</th>
            <th scope="col">{said.takenFor}</th>
            <th scope="col">{said.unit}</th>
            <th scope="col" className={table.number}>
              {said.first}
            </th>
            <th scope="col" className={table.number}>
              {said.sure}
            </th>
            <th scope="col">{said.why}</th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => {
            const column = columns[part.index];
            if (part.kind === 'gap') {
              return (
                <tr key={`gap-${part.index}`} aria-hidden>
                  <td colSpan={6} style={{ height: part.height_px, padding: 0, border: 0 }} />
                </tr>
              );
            }
            return (
              column && (
                <ColumnRow
                  key={column.column}
                  column={column}
                  meaning={meaningOf(column, draft)}
                  isCorrected={column.column in draft}
                  preview={preview.of(column.column)}
                  offered={offered}
                  onChange={(meaning) => setDraft((old) => ({ ...old, [column.column]: meaning }))}
                  {...propsOf(part.index)}
                />
              )
            );
          })}
        </tbody>
      </table>
    </Dialog>
  );
}
