import { ToggleButton } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import { usePreferences } from '../hooks/use-preferences.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './RideHead.module.css';

export type RideHeadProps = {
  readonly title: string;
  readonly progress: string;
  /** After the pointer pressed something: keys belong to the view again. */
  readonly onDone: () => void;
};

/** Which entry, how many pulls, and whether it may be heard. */
export function RideHead({ title, progress, onDone }: RideHeadProps) {
  const { screens } = useWords();
  const { preferences, set } = usePreferences();
  return (
    <header className={styles.head}>
      <h1 className={styles.title}>{title}</h1>
      <p className={styles.progress}>{progress}</p>
      <ToggleButton
        className={cx(styles.sound)}
        isSelected={preferences.rideSound}
        onChange={(rideSound) => set({ rideSound })}
        onPress={(event) => event.pointerType !== 'keyboard' && onDone()}
      >
        {screens.ride.sound(preferences.rideSound)}
      </ToggleButton>
    </header>
  );
}
