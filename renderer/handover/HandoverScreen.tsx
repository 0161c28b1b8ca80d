import { useRef, useState } from 'react';
import { ProblemList } from '../components/ProblemList.tsx';
import { useAnswer } from '../hooks/use-answer.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { today } from '../today.ts';
import styles from './HandoverScreen.module.css';
import { HandoverSheet } from './HandoverSheet.tsx';
import { SheetPreview } from './SheetPreview.tsx';

/** The customer summary as it will be printed, and the few things to decide about it. */
export function HandoverScreen() {
  const { screens } = useWords();
  const { snapshot } = useSession();
  const [date, setDate] = useState(today);
  const [against, setAgainst] = useState<string | null>(null);
  const frame = useRef<HTMLIFrameElement>(null);
  const wish = { date, ...(against === null ? {} : { against }) };
  const made = useAnswer(
    'handover.make',
    snapshot ? wish : null,
    snapshot?.revision ?? 0,
    snapshot?.folder ?? '',
  );
  const said = screens.handover;
  return (
    <>
      <main className={styles.main} id="main" tabIndex={-1} aria-busy={made.isBusy}>
        <h1 className="visually-hidden">{said.title}</h1>
        {made.problems && (
          <div className={styles.message}>
            <h2>{said.failed}</h2>
            <ProblemList problems={made.problems} />
          </div>
        )}
        {!made.value && !made.problems && <p className={styles.message}>{said.making}</p>}
        {made.value && (
          <SheetPreview frame={frame} className={styles.page} title={said.preview} html={made.value.html} />
        )}
      </main>
      <HandoverSheet
        made={made.value}
        wish={wish}
        date={date}
        onDate={setDate}
        against={against}
        onAgainst={setAgainst}
        onPrint={() => frame.current?.contentWindow?.print()}
      />
    </>
  );
}
