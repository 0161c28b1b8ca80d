import { X } from 'lucide-react';
import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { Button } from './Button.tsx';
import styles from './Dialog.module.css';

export type DialogProps = {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Buttons at the foot, the main one first. */
  readonly actions?: ReactNode;
  /** `sheet` stands at the right edge over the full height. */
  readonly shape?: 'box' | 'wide' | 'sheet';
};

export function Dialog({ title, isOpen, onClose, children, actions, shape = 'box' }: DialogProps) {
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
          {actions && <footer className={styles.foot}>{actions}</footer>}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
