import { X } from 'lucide-react';
import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import type { Problem } from '../../core/result/index.ts';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { Button } from './Button.tsx';
import styles from './Dialog.module.css';
import { ProblemList } from './ProblemList.tsx';

export type DialogProps = {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** What stood in the way of the main button, kept in sight above it. */
  readonly problems?: readonly Problem[] | null;
  /** Buttons at the foot, the main one first. */
  readonly actions?: ReactNode;
  /** `roomy` holds three buttons in a row; `sheet` stands at the right edge over the full height. */
  readonly shape?: 'box' | 'roomy' | 'wide' | 'sheet';
};

export function Dialog({ title, isOpen, onClose, children, problems, actions, shape = 'box' }: DialogProps) {
  const { screens } = useWords();
  return (
    <ModalOverlay
      isOpen={isOpen}
      onOpenChange={(open) => !open && onClose()}
      isDismissable
      className={cx(styles.overlay, shape === 'sheet' && styles.side)}
    >
      <Modal className={cx(styles.modal, styles[shape])}>
        <AriaDialog className={cx(styles.dialog)}>
          <header className={styles.head}>
            <Heading slot="title" className={cx(styles.title)}>
              {title}
            </Heading>
            <Button look="icon" onPress={onClose} aria-label={screens.shell.close}>
              <X aria-hidden />
            </Button>
          </header>
          <div className={styles.body}>{children}</div>
          {problems && problems.length > 0 && (
            <div className={styles.problems}>
              <ProblemList problems={problems} />
            </div>
          )}
          {actions && <footer className={styles.foot}>{actions}</footer>}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
