import { type ClipboardEvent, useMemo, useState } from 'react';
import type { Problem } from '../../core/result/index.ts';
import { ambientPressureOf, readMeant, type Session } from '../../core/session/index.ts';
import {
  type CellMeaning,
  guessAxes,
  guessMeaning,
  readTable,
  type TableAxes,
} from '../../core/tables/index.ts';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { FilePicker } from '../components/FilePicker.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { useOnce } from '../hooks/use-once.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { MeaningFields } from './MeaningFields.tsx';
import styles from './Tables.module.css';
import { readTableFile, type TableFile } from './table-bytes.ts';

export type ReadTableDialogProps = {
  readonly session: Session;
  readonly onClose: () => void;
  readonly onAdded: (id: string) => void;
};

type Source = TableFile & { readonly fileName: string };
const nothing: Source = { text: '', encoding: 'utf-8', fileName: '' };

/** Paste or a file, what it seems to be, and every fault by line and column before anything is kept. */
export function ReadTableDialog({ session, onClose, onAdded }: ReadTableDialogProps) {
  const { screens } = useWords();
  const { edit } = useSession();
  const said = screens.tables;
  const [source, setSource] = useState<Source>(nothing);
  const [isNoText, setNoText] = useState(false);
  const [chosen, setChosen] = useState<{ meaning?: CellMeaning; axes?: TableAxes; name?: string }>({});
  const read = useMemo(() => (source.text === '' ? null : readTable(source.text)), [source.text]);
  const table = read?.ok ? read.value : null;
  const guess = useMemo(() => {
    if (!table) return null;
    const title = `${source.fileName} ${source.text.split(/\r?\n/).slice(0, table.origin.row).join(' ')}`;
    return { meaning: guessMeaning(table.values, title), axes: guessAxes(table) };
  }, [table, source]);
  const meaning = chosen.meaning ?? guess?.meaning ?? null;
  const axes = chosen.axes ?? guess?.axes ?? null;
  const name = chosen.name ?? (meaning ? said.kinds[meaning.kind] : '');
  const meant =
    table && meaning && axes
      ? readMeant(source.text, { ...meaning, axes }, ambientPressureOf(session))
      : null;
  const problems: readonly Problem[] = [
    ...(read && !read.ok ? read.problems : []),
    ...(meant && !meant.ok ? meant.problems : []),
  ].map((p) => (source.fileName === '' ? p : { ...p, where: { ...p.where, file: source.fileName } }));

  const take = (next: Source) => {
    setNoText(false);
    setChosen({});
    setSource(next);
  };
  const takeFile = async ([file]: File[]) => {
    if (!file) return;
    const found = await readTableFile(file);
    if (found) take({ ...found, fileName: file.name });
    else setNoText(true);
  };
  // The field itself would change line ends: what is pasted over everything is kept as it came.
  const onPaste = (event: ClipboardEvent<HTMLElement>) => {
    const text = event.clipboardData.getData('text/plain');
    const field = event.target;
    if (text === '' || !(field instanceof HTMLTextAreaElement)) return;
    const isAll = field.selectionStart === 0 && field.selectionEnd === field.value.length;
    if (!isAll) return;
    event.preventDefault();
    take({ ...nothing, text });
  };
  const add = useOnce(async () => {
    if (!meant?.ok || !meaning || !axes) return;
    const id = `t-${crypto.randomUUID().slice(0, 13)}`;
    const { text, encoding, fileName } = source;
    const added = await edit({
      type: 'table.add',
      table: {
        id,
        name: name.trim() || said.kinds[meaning.kind],
        ...meaning,
        axes,
        fileName,
        encoding,
        readAt: new Date().toISOString(),
        asRead: text,
        recorded: text,
        now: text,
        limit: null,
      },
    });
    if (added) onAdded(id);
  });
  const pasted = source.fileName === '' ? source.text : '';
  return (
    <Dialog
      title={said.readTitle}
      onClose={onClose}
      isUnsaved={isMuchTyped(['', ''], [pasted, chosen.name ?? ''])}
      shape="wide"
      problems={problems.slice(0, 5)}
      actions={
        <>
          <Button look="main" isDisabled={!meant?.ok} onPress={add}>
            {said.add}
          </Button>
          <CancelButton />
        </>
      }
    >
      <div onPaste={onPaste}>
        <TextField
          label={said.paste}
          hint={said.pasteHint}
          rows={6}
          value={source.text}
          onChange={(text) => take({ ...nothing, text })}
          autoFocus
        />
      </div>
      <div className={styles.bar}>
        <FilePicker onFiles={(files) => void takeFile(files)}>{said.orFile}</FilePicker>
        {isNoText && <p role="alert">{said.badFile}</p>}
        {source.fileName !== '' && <p>{source.fileName}</p>}
        {table && <p>{said.found(table.down.length, table.across.length)}</p>}
      </div>
      {table && axes && (
        <MeaningFields
          meaning={meaning}
          axes={axes}
          name={name}
          onMeaning={(next) => setChosen({ ...chosen, meaning: next })}
          onAxes={(next) => setChosen({ ...chosen, axes: next })}
          onName={(next) => setChosen({ ...chosen, name: next })}
        />
      )}
    </Dialog>
  );
}
