import { Button } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './RideFoot.module.css';

export type RideFootProps = {
  readonly next: string;
  /** A gate has closed: the next thing to do is to stop. */
  readonly isStop: boolean;
  readonly marks: { readonly mark: () => void; readonly undo: () => void };
  readonly onLeave: () => void;
};

/** The next step, who may touch this, and the three keys; each can be tapped as well. */
export function RideFoot({ next, isStop, marks, onLeave }: RideFootProps) {
  const said = useWords().screens.ride;
  const keys = [
    { key: said.keys.mark, word: said.mark, run: marks.mark },
    { key: said.keys.undo, word: said.undo, run: marks.undo },
    { key: said.keys.bench, word: said.bench, run: onLeave },
  ];
  return (
    <footer className={styles.foot}>
      <p className={cx(styles.next, isStop && styles.stop)}>{next}</p>
      <div className={styles.last}>
        <p className={styles.caution}>{said.caution}</p>
        <div className={styles.keys}>
          {keys.map(({ key, word, run }) => (
            // Not reached by Tab: the keys themselves are the way, and Space would press what has the focus.
            <Button
              key={key}
              className={cx(styles.key)}
              onPress={run}
              excludeFromTabOrder
              preventFocusOnPress
            >
              <kbd>{key}</kbd> {word}
            </Button>
          ))}
        </div>
      </div>
    </footer>
  );
}
