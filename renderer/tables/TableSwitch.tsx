import { MoreHorizontal } from 'lucide-react';
import type { SessionTable } from '../../core/session/index.ts';
import { Button } from '../components/Button.tsx';
import { Menu } from '../components/Menu.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { Select } from '../components/Select.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './Tables.module.css';

export type TableSwitchProps = {
  readonly tables: readonly SessionTable[];
  readonly table: SessionTable;
  readonly onChoose: (id: string) => void;
  readonly onRead: () => void;
};

/** Which table is open, another one, and what is done to it as a whole. */
export function TableSwitch({ tables, table, onChoose, onRead }: TableSwitchProps) {
  const { screens } = useWords();
  const { snapshot, edit, undo } = useSession();
  const { say } = useToasts();
  const said = screens.tables;
  const isReadOnly = snapshot?.readOnly !== null;
  const options = tables.map((t) => ({ id: t.id, label: t.name }));
  const remove = async () => {
    if (await edit({ type: 'table.remove', tableId: table.id }))
      say(said.removed, { label: screens.shell.undo, run: () => void undo() });
  };
  return (
    <div className={styles.bar}>
      {tables.length > 4 ? (
        <Select label={said.which} isLabelHidden options={options} value={table.id} onChange={onChoose} />
      ) : (
        <Segmented label={said.which} isLabelHidden options={options} value={table.id} onChange={onChoose} />
      )}
      <Button look="second" isDisabled={isReadOnly} onPress={onRead}>
        {said.read}
      </Button>
      <Menu
        label={said.more(table.name)}
        trigger={<MoreHorizontal aria-hidden />}
        parts={[
          {
            title: '',
            choices: [
              {
                id: 'back',
                label: said.takeBack,
                isDisabled: isReadOnly || table.now === table.recorded,
                run: () =>
                  void edit({ type: 'table.set', tableId: table.id, patch: { now: table.recorded } }),
              },
              { id: 'remove', label: said.remove, isDisabled: isReadOnly, run: () => void remove() },
            ],
          },
        ]}
      />
    </div>
  );
}
