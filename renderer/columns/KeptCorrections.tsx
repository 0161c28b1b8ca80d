import { correctionsFor, withoutCorrections } from '../../core/log/index.ts';
import { Button } from '../components/Button.tsx';
import { usePreferences } from '../hooks/use-preferences.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './ColumnsDialog.module.css';

/** What is kept for later logs with these columns, and the way to forget it; nothing where nothing is kept. */
export function KeptCorrections({ columns }: { columns: readonly string[] }) {
  const { screens } = useWords();
  const { preferences, set } = usePreferences();
  const kept = correctionsFor(preferences.columnProfiles, columns);
  if (kept.length === 0) return null;
  return (
    <p className={styles.kept}>
      {screens.columns.kept(kept.map((m) => m.column).join(', '))}{' '}
      <Button
        look="plain"
        onPress={() => set({ columnProfiles: withoutCorrections(preferences.columnProfiles, columns) })}
      >
        {screens.columns.forget}
      </Button>
    </p>
  );
}
