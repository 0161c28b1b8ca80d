import { Plus } from 'lucide-react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { Button } from '../components/Button.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './ChannelPicker.module.css';
import type { ChannelChoice } from './channel-choice.ts';

export type ChannelPickerProps = {
  readonly choices: readonly ChannelChoice[];
  readonly chosen: readonly string[];
  readonly nameOf: (choice: ChannelChoice) => string;
  /** In the order they were chosen, the newest last. */
  readonly onChange: (keys: string[]) => void;
  /** Asks for the dialog in which channels are made from others. */
  readonly onDerive: () => void;
};

/** Every channel that the logs hold, to switch on and off; arrow keys move along them. */
export function ChannelPicker({ choices, chosen, nameOf, onChange, onDerive }: ChannelPickerProps) {
  const said = useWords().screens.channels;
  return (
    <div className={styles.picker}>
      <p className={styles.label}>{said.choose}</p>
      <div className={styles.list}>
        <ToggleButtonGroup
          aria-label={said.choose}
          selectionMode="multiple"
          disallowEmptySelection
          selectedKeys={chosen}
          onSelectionChange={(keys) =>
            onChange([
              ...chosen.filter((key) => keys.has(key)),
              ...[...keys].map(String).filter((key) => !chosen.includes(key)),
            ])
          }
          className={cx(styles.group)}
        >
          {choices.map((choice) => (
            <ToggleButton key={choice.key} id={choice.key} className={cx(styles.choice)}>
              {nameOf(choice)}
            </ToggleButton>
          ))}
        </ToggleButtonGroup>
        <span className={styles.derive}>
          <Button look="plain" aria-haspopup="dialog" onPress={onDerive}>
            <Plus aria-hidden />
            {said.derived}
          </Button>
        </span>
      </div>
    </div>
  );
}
