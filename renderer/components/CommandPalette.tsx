import { useState } from 'react';
import {
  Autocomplete,
  Dialog,
  Input,
  Menu,
  MenuItem,
  Modal,
  ModalOverlay,
  SearchField,
  useFilter,
} from 'react-aria-components';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './CommandPalette.module.css';
import { Keys } from './Keys.tsx';

export type Command = {
  readonly id: string;
  readonly title: string;
  readonly keys: string | null;
  readonly run: () => void;
};

export type CommandPaletteProps = {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly commands: readonly Command[];
};

/** More would have to be scrolled; another letter finds the rest sooner. */
const most = 9;

/** Every action by name. The list is the same that the menu and the keys are made from. */
export function CommandPalette({ isOpen, onClose, commands }: CommandPaletteProps) {
  const { screens } = useWords();
  const { contains } = useFilter({ sensitivity: 'base' });
  const [text, setText] = useState('');
  const found = commands.filter((c) => contains(c.title, text)).slice(0, most);
  const close = () => {
    setText('');
    onClose();
  };
  const run = (id: string) => {
    close();
    commands.find((c) => c.id === id)?.run();
  };
  return (
    <ModalOverlay
      isOpen={isOpen}
      onOpenChange={(open) => !open && close()}
      isDismissable
      className={cx(styles.overlay)}
    >
      <Modal className={cx(styles.modal)}>
        <Dialog aria-label={screens.shell.commands} className={cx(styles.dialog)}>
          <Autocomplete inputValue={text} onInputChange={setText}>
            <SearchField aria-label={screens.shell.commandsHint} autoFocus className={cx(styles.field)}>
              <Input placeholder={screens.shell.commandsHint} className={cx(styles.input)} />
            </SearchField>
            <Menu
              aria-label={screens.shell.commands}
              items={found}
              onAction={(id) => run(String(id))}
              renderEmptyState={() => <p className={styles.none}>{screens.shell.noCommand}</p>}
              className={cx(styles.list)}
            >
              {(command) => (
                <MenuItem id={command.id} textValue={command.title} className={cx(styles.item)}>
                  <span>{command.title}</span>
                  {command.keys && <Keys keys={command.keys} />}
                </MenuItem>
              )}
            </Menu>
          </Autocomplete>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
