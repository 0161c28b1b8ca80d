import { useRef, useState } from 'react';
import { ProblemList } from '../components/ProblemList.tsx';
import { useAnswer } from '../hooks/use-answer.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './HandoverScreen.module.css';
import { HandoverSheet } from './HandoverSheet.tsx';

/** The customer summary as it will be printed, and the few things to decide about it. */
export function HandoverScreen() {
  const { screens } = useWords();
  const { snapshot } = useSession();
  const [date, setDate] = useState(() => new Date().toISOString().slice(0, 10));
  const frame = useRef<HTMLIFrameElement>(null);
  const isDate = /^\d{4}-\d{2}-\d{2}$/.test(date);
  const made = useAnswer(
    'handover.make',
    snapshot ? (isDate ? { date } : {}) : null,
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
          // Scripts stay forbidden inside: the summary needs none, and what stands in it came from files.
          <iframe
            ref={frame}
            className={styles.page}
            title={said.preview}
            sandbox="allow-same-origin allow-modals"
            srcDoc={made.value.html}
          />
        )}
      </main>
      <HandoverSheet
        made={made.value}
        date={date}
        isDate={isDate}
        onDate={setDate}
        onPrint={() => frame.current?.contentWindow?.print()}
      />
    </>
  );
}
