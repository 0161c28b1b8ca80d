import type { Snapshot } from '../../core/contract/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { Caution } from '../components/Caution.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import { useAnswer } from '../hooks/use-answer.ts';
import { useLedger } from '../hooks/use-ledger.ts';
import { useWords } from '../hooks/use-words.tsx';
import { ClosedGateActions } from './ClosedGateActions.tsx';
import { GateList } from './GateList.tsx';
import { gateWords } from './gate-words.ts';
import styles from './NowCard.module.css';
import { StepActions } from './StepActions.tsx';
import { stepWords } from './step-words.ts';
import { whatNow } from './what-now.ts';

/** What the ledger alone can say, while engine and fluid system are not known well enough for a ladder. */
export function PlainNow({ snapshot }: { snapshot: Snapshot }) {
  const { screens, show } = useWords();
  const showView = useShow();
  const ledger = useLedger();
  const driven = snapshot.session.ledger.findLast((e) => e.state === 'kept' && e.runs.length > 0);
  const gates = useAnswer(
    'entries.gates',
    driven ? { entryId: driven.id } : null,
    snapshot.revision,
    `${snapshot.folder} ${driven?.id}`,
  );
  const said = screens.now;
  const closed = gates.value?.gates.find((g) => g.state === 'closed');
  if (closed && driven) {
    const { name, value } = gateWords(closed, screens, show);
    return (
      <SideSheet
        label={said.title}
        kicker={said.title}
        title={screens.ride.closed(name, closed.ifClosed)}
        why={said.closedWhy(value)}
      >
        <p className={styles.about}>{entryTitle(driven, show)}</p>
        <ClosedGateActions entry={driven} action={closed.ifClosed} />
        <Caution>{said.cautions.boost}</Caution>
        <GateList gates={gates.value?.gates ?? []} isDriven />
      </SideSheet>
    );
  }
  const step = whatNow(snapshot, ledger.value);
  const words = step && stepWords(step, (entry) => entryTitle(entry, show), said);
  const isChange = step?.kind === 'change' || step?.kind === 'next';
  return (
    <SideSheet
      label={said.title}
      kicker={said.title}
      title={words?.title ?? screens.ledger.computing}
      why={words?.why ?? ''}
    >
      {step && (
        <>
          <StepActions step={step} />
          <Caution>{isChange ? said.cautions.boost : said.cautions.pull}</Caution>
          <GateList gates={gates.value?.gates ?? []} isDriven />
          <p className={styles.why}>{said.noLadder}</p>
          <div>
            <Button onPress={() => showView({ screen: 'setup', section: 'engine' })}>{said.openSetup}</Button>
          </div>
        </>
      )}
    </SideSheet>
  );
}
