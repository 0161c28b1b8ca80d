import { FolderSync } from 'lucide-react';
import type { FolderWatch } from '../../core/contract/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { cx } from '../design/cx.ts';
import { useClock } from '../hooks/use-clock.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useWatch } from './use-watch.tsx';
import styles from './WatchBar.module.css';
import { ageWords, folderName, lastLog, logWords } from './watch-words.ts';

/** Under the bar while a folder is watched: which, what came last, and how long ago. */
export function WatchBar() {
  const { watch } = useWatch();
  return watch && <Line watch={watch} />;
}

function Line({ watch }: { watch: FolderWatch }) {
  const words = useWords();
  const show = useShow();
  const { snapshot } = useSession();
  const { stop } = useWatch();
  const now = useClock();
  const said = words.screens.watch;
  const last = lastLog(watch);
  const state = last && logWords(last, watch.takes, snapshot?.runs ?? [], words);
  const trouble = watch.problem && words.problem(watch.problem);
  return (
    <section className={styles.bar} aria-label={said.title}>
      <FolderSync aria-hidden className={styles.icon} />
      <button
        type="button"
        className={styles.folder}
        title={watch.folder}
        onClick={() => show({ dialog: { type: 'watch' } })}
      >
        {said.watching(folderName(watch.folder))}
      </button>
      <span className={styles.age}>
        {last
          ? said.lastLog(ageWords(last.changedAt, now, words))
          : said.since(ageWords(watch.startedAt, now, words))}
      </span>
      <p className={cx(styles.state, (trouble || state?.isFault) && styles.fault)} role="status">
        {trouble ? `${said.noAnswer}. ${trouble.message}` : state?.text}
      </p>
      <Button look="plain" onPress={stop}>
        {said.stop}
      </Button>
    </section>
  );
}
