import { X } from 'lucide-react';
import { type KeyboardEvent, type ReactNode, useId, useRef } from 'react';
import type { Problem } from '../../core/result/index.ts';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { Button } from './Button.tsx';
import { LeaveContext } from './CancelButton.tsx';
import styles from './Dialog.module.css';
import { Modal } from './Modal.tsx';
import { ProblemList } from './ProblemList.tsx';
import { useLeave } from './use-leave.tsx';

export type DialogProps = {
  readonly title: string;
  readonly onClose: () => void;
  /** What was entered would be lost: Escape, a click beside it and the buttons that close and cancel ask first. */
  readonly isUnsaved?: boolean;
  readonly children: ReactNode;
  /** What stood in the way of the main button, kept in sight above it. */
  readonly problems?: readonly Problem[] | null;
  /** Buttons at the foot, the main one first. */
  readonly actions?: ReactNode;
  /** `roomy` holds three buttons in a row; `sheet` stands at the right edge over the full height. */
  readonly shape?: 'box' | 'roomy' | 'wide' | 'widest' | 'sheet';
};

/** Kinds of input in which Enter means nothing else, as in a form: a line of text, one of a few. */
const confirmed = ['text', 'number', 'search', 'radio'];

export function Dialog(props: DialogProps) {
  const { title, onClose, isUnsaved = false, children, problems, actions, shape = 'box' } = props;
  const { screens } = useWords();
  const id = useId();
  const { leave, question } = useLeave(isUnsaved, onClose);
  const foot = useRef<HTMLElement>(null);
  /** Enter in a field presses the main button, as it would in a form. */
  const enter = (event: KeyboardEvent) => {
    const isField = event.target instanceof HTMLInputElement && confirmed.includes(event.target.type);
    if (event.key !== 'Enter' || event.nativeEvent.isComposing || !isField) return;
    event.preventDefault();
    foot.current?.querySelector<HTMLButtonElement>('button')?.click();
  };
  return (
    <Modal
      labelledBy={id}
      onClose={leave}
      classes={[
        cx(styles.overlay, shape === 'sheet' && styles.side),
        cx(styles.modal, styles[shape]),
        cx(styles.dialog),
      ]}
    >
      <header className={styles.head}>
        <h2 id={id} className={styles.title}>
          {title}
        </h2>
      </header>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: it hears the fields inside */}
      <div className={styles.body} onKeyDown={enter}>
        {children}
      </div>
      {problems && problems.length > 0 && (
        <div className={styles.problems}>
          <ProblemList problems={problems} />
        </div>
      )}
      {actions && (
        <footer ref={foot} className={styles.foot}>
          <LeaveContext value={leave}>{actions}</LeaveContext>
        </footer>
      )}
      {/* Seen at the head, where a hand looks for it; told and reached last, behind what the dialog is for. */}
      <div className={styles.close}>
        <Button look="icon" onPress={leave} aria-label={screens.shell.close}>
          <X aria-hidden />
        </Button>
      </div>
      {question}
    </Modal>
  );
}
