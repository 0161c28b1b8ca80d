import { Progress } from '../components/Progress.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './ImportBar.module.css';
import { useImportProgress } from './use-imports.tsx';

/** What is being read in, while it is. */
export function ImportBar() {
  const { job, waiting } = useImportProgress();
  const { screens } = useWords();
  if (!job) return null;
  const label = screens.importing.reading(job.name);
  return (
    <div className={styles.bar}>
      <Progress
        label={waiting > 0 ? `${label} (+${waiting})` : label}
        share={job.share}
        onCancel={job.cancel}
      />
    </div>
  );
}
