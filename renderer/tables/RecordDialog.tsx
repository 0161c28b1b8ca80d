import { useState } from 'react';
import { openChangeOf, type Session, type SessionEdit, type TableChange } from '../../core/session/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Caution } from '../components/Caution.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { Select } from '../components/Select.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { entryPartOf, newEntry } from '../entry/change-draft.ts';
import { useOnce } from '../hooks/use-once.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { draftOfCells, openEntries } from './record-draft.ts';
import { TableChangeTable } from './TableChangeTable.tsx';
import type { TableNow } from './use-table.ts';

export type RecordDialogProps = {
  readonly session: Session;
  readonly of: TableNow;
  readonly onClose: () => void;
};

/** The cells become the change of a new entry, or of one that waits for its pulls; one step of undo. */
export function RecordDialog(props: RecordDialogProps) {
  const change = openChangeOf(props.of.table);
  return change && <OpenRecord {...props} change={change} />;
}

function OpenRecord({ session, of, onClose, change }: RecordDialogProps & { readonly change: TableChange }) {
  const { screens, show } = useWords();
  const { edit, undo } = useSession();
  const { say } = useToasts();
  const said = screens.tables;
  const { table } = of;
  const open = openEntries(session.ledger, change);
  const [entryId, setEntryId] = useState(open.at(-1)?.id ?? '');
  const waiting = open.find((e) => e.id === entryId);
  const [opened] = useState(waiting?.change?.where || said.inCells(change.cells.length));
  const [where, setWhere] = useState(opened);
  const draft = draftOfCells(change, where);
  const title = entryTitle(waiting ? { ...waiting, ...partOf() } : entryPartOf(draft), show);

  /** What a waiting entry declares stays as it was declared; the cells join it. */
  function partOf() {
    const old = waiting?.change;
    const declared = old && (old.from !== null || old.to !== null);
    return {
      change: {
        from: declared ? old.from : draft.from,
        to: declared ? old.to : draft.to,
        where: where.trim(),
        table: change,
      },
    };
  }
  const record = useOnce(async () => {
    const written: SessionEdit = {
      type: 'table.set',
      tableId: table.id,
      patch: { recorded: table.now },
    };
    const entry: SessionEdit = waiting
      ? { type: 'entry.set', entryId: waiting.id, patch: partOf() }
      : { type: 'entry.add', entry: newEntry(draft) };
    if (!(await edit([entry, written]))) return;
    say(said.recorded(title), { label: screens.shell.undo, run: () => void undo() });
    onClose();
  });
  return (
    <Dialog
      title={said.recordTitle}
      onClose={onClose}
      isUnsaved={isMuchTyped([opened], [where])}
      actions={
        <>
          <Button look="main" onPress={record}>
            {said.record}
          </Button>
          <CancelButton />
        </>
      }
    >
      <p>{said.recordWhy(change.cells.length)}</p>
      <Select
        label={said.recordIn}
        options={[
          { id: '', label: said.newEntry },
          ...open.map((e) => ({ id: e.id, label: `${session.ledger.indexOf(e)} ${entryTitle(e, show)}` })),
        ]}
        value={entryId}
        onChange={setEntryId}
      />
      <TextField label={screens.entry.where} value={where} onChange={setWhere} maxLength={200} />
      <p>
        {screens.entry.willBeCalled}: <strong>{title}</strong>
      </p>
      <TableChangeTable change={change} />
      <Caution>{said.cautions[table.kind]}</Caution>
    </Dialog>
  );
}
