import { Pin } from 'lucide-react';
import { Group } from 'react-aria-components';
import { SteadyText } from '../components/SteadyText.tsx';
import { Toggle } from '../components/Toggle.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import picker from './ChannelPicker.module.css';
import styles from './PullPins.module.css';
import type { NamedPull } from './shown-pulls.ts';

export type PullPinsProps = {
  readonly pulls: readonly NamedPull[];
  readonly pinned: readonly string[];
  readonly onToggle: (pullId: string) => void;
};

/** The pulls in view; a pinned one stays when the bench moves on to other entries. */
export function PullPins({ pulls, pinned, onToggle }: PullPinsProps) {
  const { screens } = useWords();
  const said = screens.channels;
  return (
    <div className={picker.picker}>
      <p className={picker.label}>{said.pulls}</p>
      <Group aria-label={said.pulls} className={cx(picker.list)}>
        {pulls.map(({ pull, side, entryNumber, number }) => {
          const name = `${entryNumber} · ${screens.bench.pullNumber(number)}`;
          return (
            <Toggle
              key={pull.id}
              aria-label={said.pin(name)}
              isOn={pinned.includes(pull.id)}
              onToggle={() => onToggle(pull.id)}
              className={cx(picker.choice, styles.pin, styles[side])}
            >
              <Pin aria-hidden /> <SteadyText>{name}</SteadyText>
            </Toggle>
          );
        })}
      </Group>
    </div>
  );
}
