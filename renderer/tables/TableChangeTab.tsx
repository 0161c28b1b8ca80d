import type { TableChange } from '../../core/session/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import { TableChangeTable } from './TableChangeTable.tsx';

/** The cells of an entry, on the bench. */
export function TableChangeTab({ change }: { change: TableChange }) {
  const { screens } = useWords();
  const { cells, name } = change;
  const said = screens.tables;
  return (
    <>
      <p>{said.tabWhy(said.chosenCells(cells.length), name)}</p>
      <TableChangeTable change={change} />
    </>
  );
}
