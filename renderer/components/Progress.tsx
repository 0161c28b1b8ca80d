import { Label, ProgressBar } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { Button } from './Button.tsx';
import styles from './Progress.module.css';

export type ProgressProps = {
  readonly label: string;
  /** 0 to 1; null while nobody can tell. */
  readonly share: number | null;
  readonly onCancel?: (() => void) | undefined;
};

export function Progress({ label, share, onCancel }: ProgressProps) {
  const { screens } = useWords();
  const value = share === null ? {} : { value: share * 100 };
  return (
    <div className={styles.row}>
      <ProgressBar {...value} isIndeterminate={share === null} className={cx(styles.progress)}>
        {({ percentage }) => (
          <>
            <Label>{label}</Label>
            <div className={styles.track}>
              <div
                className={cx(styles.fill, share === null && styles.unknown)}
                style={share === null ? undefined : { width: `${percentage}%` }}
              />
            </div>
          </>
        )}
      </ProgressBar>
      {onCancel && (
        <Button look="plain" onPress={onCancel}>
          {screens.shell.cancel}
        </Button>
      )}
    </div>
  );
}
