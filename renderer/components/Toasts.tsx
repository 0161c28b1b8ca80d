import { X } from 'lucide-react';
import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import { cx } from '../design/cx.ts';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { Button } from './Button.tsx';
import { ProblemList } from './ProblemList.tsx';
import styles from './Toasts.module.css';

/**
 * Remarks in passing, at the foot of the window; announced to a screen reader. They stand beside the window and its
 * dialogs, so that they are heard and can be dismissed while one is open; a dialog ends above them.
 */
export function Toasts() {
  const [home, setHome] = useState<HTMLElement | null>(null);
  useEffect(() => setHome(document.body), []);
  return home && createPortal(<Region />, home);
}

/** What is being worked on is never covered: it scrolls up, as far as there is room. */
function showFocusAbove(region: HTMLElement): void {
  const focused = document.activeElement;
  if (!focused?.closest('main') || region.contains(focused)) return;
  const [of, over] = [focused.getBoundingClientRect(), region.getBoundingClientRect()];
  const isBeside = of.right <= over.left || of.left >= over.right;
  // A focus as tall as a screen is no cell and no field.
  if (isBeside || of.bottom <= over.top || of.height > over.top) return;
  focused.scrollIntoView({ block: 'nearest', inline: 'nearest' });
}

function Region() {
  const { toasts, dismiss } = useToasts();
  const { screens } = useWords();
  const region = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const element = region.current;
    if (!element) return;
    const root = document.documentElement;
    const seen = new ResizeObserver(() => {
      root.style.setProperty('--told', `${element.offsetHeight}px`);
      showFocusAbove(element);
    });
    seen.observe(element);
    return () => {
      seen.disconnect();
      root.style.removeProperty('--told');
    };
  }, []);
  return (
    <section
      ref={region}
      className={styles.region}
      aria-live="polite"
      aria-label={screens.shell.messages}
      data-live-announcer
    >
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
