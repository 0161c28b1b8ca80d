import { useId } from 'react';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { Button } from './Button.tsx';
import styles from './Dialog.module.css';
import { Modal } from './Modal.tsx';

export type LeaveQuestionProps = {
  readonly onStay: () => void;
  readonly onLeave: () => void;
};

/** Whether what was typed may be lost. Escape, Enter and a click beside it lose nothing. */
export function LeaveQuestion({ onStay, onLeave }: LeaveQuestionProps) {
  const { screens } = useWords();
  const said = screens.shell.leave;
  const id = useId();
  return (
    <Modal
      labelledBy={`${id} ${id}-why`}
      onClose={onStay}
      classes={[cx(styles.overlay, styles.middle), cx(styles.modal, styles.small), cx(styles.dialog)]}
    >
      <header className={styles.head}>
        <h2 id={id} className={styles.title}>
          {said.title}
        </h2>
      </header>
      <p id={`${id}-why`} className={styles.body}>
        {said.why}
      </p>
      <footer className={styles.foot}>
        <Button look="main" onPress={onStay} autoFocus>
          {said.stay}
        </Button>
        <Button onPress={onLeave}>{said.go}</Button>
      </footer>
    </Modal>
  );
}
