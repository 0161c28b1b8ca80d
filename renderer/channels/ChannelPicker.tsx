import { Plus } from 'lucide-react';
import { useState } from 'react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { Button } from '../components/Button.tsx';
import { SteadyText } from '../components/SteadyText.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './ChannelPicker.module.css';
import { type ChannelChoice, mostOffered, offeredOf } from './channel-choice.ts';

export type ChannelPickerProps = {
  readonly choices: readonly ChannelChoice[];
  readonly chosen: readonly string[];
  readonly nameOf: (choice: ChannelChoice) => string;
  /** In the order they were chosen, the newest last. */
  readonly onChange: (keys: string[]) => void;
  /** Asks for the dialog in which channels are made from others. */
  readonly onDerive: () => void;
};

/** The channels that the logs hold, to switch on and off; arrow keys move along them, many are found by name. */
export function ChannelPicker({ choices, chosen, nameOf, onChange, onDerive }: ChannelPickerProps) {
  const said = useWords().screens.channels;
  const [sought, setSought] = useState('');
  const { offered, left } = offeredOf(choices, chosen, sought, nameOf);
  return (
    <div className={styles.picker}>
      <p className={styles.label}>{said.choose}</p>
      <div className={styles.list}>
        {choices.length > mostOffered && (
          <input
            type="search"
            className={styles.find}
            aria-label={said.find}
            placeholder={said.find}
            value={sought}
            onChange={(event) => setSought(event.target.value)}
          />
        )}
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
          {offered.map((choice) => (
            <ToggleButton key={choice.key} id={choice.key} className={cx(styles.choice)}>
              <SteadyText>{nameOf(choice)}</SteadyText>
            </ToggleButton>
          ))}
        </ToggleButtonGroup>
        {left > 0 && <span className={styles.unshown}>{said.unshown(left)}</span>}
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
