import { type KeyboardEvent, useId, useLayoutEffect, useRef, useState } from 'react';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './CommandPalette.module.css';
import { isNamed } from './is-named.ts';
import { Keys } from './Keys.tsx';
import { Modal } from './Modal.tsx';

export type Command = {
  readonly id: string;
  readonly title: string;
  readonly keys: string | null;
  readonly run: () => void;
};

export type CommandPaletteProps = {
  readonly onClose: () => void;
  readonly commands: readonly Command[];
};

/** More would have to be scrolled; another letter finds the rest sooner. */
const most = 9;

/** Every action by name. The list is the same that the menu and the keys are made from. */
export function CommandPalette({ onClose, commands }: CommandPaletteProps) {
  const { screens } = useWords();
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const [text, setText] = useState('');
  // Nothing is chosen until something was typed or an arrow pressed: Enter alone must not run the first.
  const [at, setAt] = useState(-1);
  const found = commands.filter((c) => isNamed(c.title, text)).slice(0, most);
  const chosen = found[at];
  const run = (command: Command) => {
    onClose();
    command.run();
  };
  useLayoutEffect(() => {
    if (at >= 0) list.current?.children[at]?.scrollIntoView({ block: 'nearest' });
  }, [at]);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
    const count = found.length;
    if (event.key === 'ArrowDown' && count > 0) setAt((at + 1) % count);
    else if (event.key === 'ArrowUp' && count > 0) setAt(at <= 0 ? count - 1 : at - 1);
    else if (event.key === 'Enter' && chosen) run(chosen);
    else return;
    event.preventDefault();
  };
  return (
    <Modal
      label={screens.shell.commands}
      onClose={onClose}
      classes={[cx(styles.overlay), cx(styles.modal), cx(styles.dialog)]}
    >
      <div className={styles.field}>
        <input
          type="text"
          role="combobox"
          aria-label={screens.shell.commandsHint}
          aria-autocomplete="list"
          aria-expanded={found.length > 0}
          aria-controls={found.length > 0 ? id : undefined}
          aria-activedescendant={chosen ? `${id}-${chosen.id}` : undefined}
          autoComplete="off"
          spellCheck={false}
          placeholder={screens.shell.commandsHint}
          value={text}
          onChange={(event) => {
            setText(event.target.value);
            setAt(event.target.value === '' ? -1 : 0);
          }}
          onKeyDown={onKeyDown}
          // biome-ignore lint/a11y/noAutofocus: a dialog of one field, opened to type in it
          autoFocus
          className={styles.input}
        />
      </div>
      {found.length === 0 && (
        <p role="status" className={styles.none}>
          {screens.shell.noCommand}
        </p>
      )}
      {found.length > 0 && (
        <div ref={list} id={id} role="listbox" aria-label={screens.shell.commands} className={styles.list}>
          {found.map((command, i) => (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the field hears the keys for all of them
            <div
              key={command.id}
              id={`${id}-${command.id}`}
              role="option"
              tabIndex={-1}
              aria-selected={i === at}
              // The field keeps the focus.
              onPointerDown={(event) => event.preventDefault()}
              onMouseDown={(event) => event.preventDefault()}
              onPointerMove={() => setAt(i)}
              onClick={() => run(command)}
              className={styles.item}
            >
              <span>{command.title}</span>
              {command.keys && <Keys keys={command.keys} />}
            </div>
          ))}
        </div>
      )}
    </Modal>
  );
}
