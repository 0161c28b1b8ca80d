import { X } from 'lucide-react';
import { cx } from '../design/cx.ts';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { Button } from './Button.tsx';
import { ProblemList } from './ProblemList.tsx';
import styles from './Toasts.module.css';

/** Remarks in passing, at the foot of the window; announced to a screen reader. */
export function Toasts() {
  const { toasts, dismiss } = useToasts();
  const { screens } = useWords();
  return (
    <section className={styles.region} aria-live="polite" aria-label={screens.shell.messages}>
      {toasts.map((toast) => (
        <div key={toast.id} className={cx(styles.toast, toast.tone === 'problem' && styles.problem)}>
          {toast.tone === 'problem' ? <ProblemList problems={toast.problems} /> : <p>{toast.text}</p>}
          {toast.action && (
            <Button
              look="plain"
              onPress={() => {
                toast.action?.run();
                dismiss(toast.id);
              }}
            >
              {toast.action.label}
            </Button>
          )}
          <Button look="icon" aria-label={screens.shell.dismiss} onPress={() => dismiss(toast.id)}>
            <X aria-hidden />
          </Button>
        </div>
      ))}
    </section>
  );
}
