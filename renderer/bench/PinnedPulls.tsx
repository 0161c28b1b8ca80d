import { PinOff } from 'lucide-react';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './PinnedPulls.module.css';
import { pinnedAt } from './readout.ts';
import type { PinnedPull } from './use-pinned.ts';

export type PinnedPullsProps = {
  readonly pinned: readonly PinnedPull[];
  /** Engine speed under the reading line [rad/s]; null while nobody points. */
  readonly at: number | null;
};

/** Under the plot: which pulls were pinned to it, what each reads at the line, and the way to let one go. */
export function PinnedPulls({ pinned, at }: PinnedPullsProps) {
  const { screens, show } = useWords();
  const showView = useShow();
  const said = screens.bench;
  if (pinned.length === 0) return null;
  return (
    <ul className={styles.list} aria-label={said.pinned}>
      {pinned.map(({ id, name, curve }) => {
        const value = at === null ? null : pinnedAt(curve, at);
        return (
          <li key={id} className={styles.pull}>
            <span className={styles.sample} aria-hidden />
            {name}
            {value !== null && <strong>{show.quantity(value, 'power')}</strong>}
            <Button
              look="icon"
              aria-label={said.unpinOf(name)}
              onPress={() =>
                showView(({ pinnedPulls }) => ({ pinnedPulls: pinnedPulls.filter((one) => one !== id) }))
              }
            >
              <PinOff aria-hidden />
            </Button>
          </li>
        );
      })}
    </ul>
  );
}
