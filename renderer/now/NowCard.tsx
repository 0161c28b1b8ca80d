import { useMemo } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { Caution } from '../components/Caution.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import tones from '../design/tones.module.css';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useLadder } from '../ladder/use-ladder.ts';
import { sheetDocOf } from '../sheets/sheet-doc.ts';
import { GateList } from './GateList.tsx';
import { LadderActions } from './LadderActions.tsx';
import styles from './NowCard.module.css';
import { PlainNow } from './PlainNow.tsx';
import { splitSentence } from './split-sentence.ts';
import { stepPlace } from './step-place.ts';

/** Reasons and cautions that a glance takes in; the ladder's own sheet has them all. */
const mostReasons = 3;
const mostCautions = 2;

/** The sheet at the right: the one thing to do, why, its gates, and the caution where the decision is made. */
export function NowCard() {
  const { snapshot } = useSession();
  return snapshot ? <NowOf snapshot={snapshot} /> : null;
}

function NowOf({ snapshot }: { snapshot: Snapshot }) {
  const { screens, show, note } = useWords();
  const { session } = snapshot;
  const place = session.conditions.place === 'dyno' ? 'dyno' : 'street';
  const doc = useMemo(() => sheetDocOf(session), [session]);
  const answer = useLadder(doc, place);
  const said = screens.now;
  if (!answer) return <SideSheet label={said.title} kicker={said.title} title={screens.ledger.computing} />;
  if (!answer.ok) return <PlainNow snapshot={snapshot} />;
  const { next, ladder } = answer.value;
  const { title, rest } = splitSentence(note(next.now));
  const about = session.ledger.find((e) => e.id === next.entryId);
  const last = session.ledger.findLast((e) => e.state === 'kept');
  const why = [
    { text: rest, isGate: false },
    ...next.why.map((n) => ({ text: note(n), isGate: n.code === 'ladder/gate' })),
  ].filter(({ text }) => text !== '');
  const step = stepPlace(next, session.ledger);
  const kicker = step ? `${said.title} · ${said.stepOf(step.number, step.of)}` : said.title;
  return (
    <SideSheet label={said.title} kicker={kicker} title={title}>
      {about && next.kind !== 'make-step' && <p className={styles.about}>{entryTitle(about, show)}</p>}
      {why.slice(0, mostReasons).map(({ text, isGate }) => (
        <p key={text} className={isGate ? tones.loss : styles.why}>
          {text}
        </p>
      ))}
      <LadderActions next={next} />
      {next.cautions.slice(0, mostCautions).map((c) => (
        <Caution key={c.code}>{note(c)}</Caution>
      ))}
      {next.cautions.length === 0 && <Caution>{said.cautions.pull}</Caution>}
      <GateList gates={next.gates} isDriven={(last?.runs.length ?? 0) > 0} />
      {ladder.steps.length > 0 && <p className={styles.why}>{said.stepsLeft(ladder.steps.length)}</p>}
    </SideSheet>
  );
}
