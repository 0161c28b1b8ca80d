import { Pin } from 'lucide-react';
import { Group, ToggleButton } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import picker from './ChannelPicker.module.css';
import styles from './PullPins.module.css';
import type { NamedPull } from './shown-pulls.ts';

export type PullPinsProps = {
  readonly pulls: readonly NamedPull[];
  readonly pinned: readonly string[];
  readonly onChange: (pinned: readonly string[]) => void;
};

/** The pulls in view; a pinned one stays when the bench moves on to other entries. */
export function PullPins({ pulls, pinned, onChange }: PullPinsProps) {
  const { screens } = useWords();
  const said = screens.channels;
  return (
    <div className={picker.picker}>
      <p className={picker.label}>
        {said.pulls} <span className={picker.hint}>{said.pinHint}</span>
      </p>
      <Group aria-label={said.pulls} className={cx(picker.list)}>
        {pulls.map(({ pull, side, entryNumber, number }) => {
          const name = `${entryNumber} · ${screens.bench.pullNumber(number)}`;
          return (
            <ToggleButton
              key={pull.id}
              aria-label={said.pin(name)}
              isSelected={pinned.includes(pull.id)}
              onChange={(isPinned) =>
                onChange(isPinned ? [...pinned, pull.id] : pinned.filter((id) => id !== pull.id))
              }
              className={cx(picker.choice, styles.pin, styles[side])}
            >
              <Pin aria-hidden /> {name}
            </ToggleButton>
          );
        })}
      </Group>
    </div>
  );
}
