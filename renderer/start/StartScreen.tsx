import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { DropArea } from '../components/DropArea.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { useAnswer } from '../hooks/use-answer.ts';
import { useWords } from '../hooks/use-words.tsx';
import { useTakeFiles } from '../importing/use-take-files.ts';
import { RecentSessions } from './RecentSessions.tsx';
import styles from './StartScreen.module.css';
import { useOpening } from './use-opening.ts';

/** No session yet: two ways in, the sessions of before, and a place to drop two logs. */
export function StartScreen() {
  const { screens } = useWords();
  const show = useShow();
  const takeFiles = useTakeFiles();
  const info = useAnswer('app.info', {}, 0);
  const { open, isOpening, problems } = useOpening();
  const said = screens.start;
  const sample = info.value?.sampleFolder ?? null;
  return (
    <main className={styles.start} id="main">
      <div className={styles.column}>
        <h1 className={styles.headline}>{said.headline}</h1>
        <p className={styles.lead}>{said.lead}</p>
        <DropArea label={said.dropLogs} onFiles={takeFiles} />
        <div className={styles.ways}>
          <div className={styles.way}>
            <Button
              look="main"
              isWide
              isDisabled={isOpening}
              onPress={() => show({ dialog: { type: 'create', files: [] } })}
            >
              {said.newSession}
            </Button>
            <p>{said.newSessionWhy}</p>
          </div>
          <div className={styles.way}>
            <Button isWide isDisabled={sample === null || isOpening} onPress={() => sample && open(sample)}>
              {said.openSample}
            </Button>
            <p>{info.value && sample === null ? said.noSample : said.openSampleWhy}</p>
          </div>
        </div>
        {problems && <ProblemList problems={problems} />}
        <RecentSessions onOpen={open} isDisabled={isOpening} />
      </div>
    </main>
  );
}
