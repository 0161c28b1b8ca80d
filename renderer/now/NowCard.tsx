import { entryTitle } from '../../core/words/index.ts';
import { Caution } from '../components/Caution.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import { useLedger } from '../hooks/use-ledger.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { StepActions } from './StepActions.tsx';
import { stepWords } from './step-words.ts';
import { whatNow } from './what-now.ts';

/** The sheet at the right: the one thing to do, why, and the caution where the decision is made. */
export function NowCard() {
  const { screens, show } = useWords();
  const { snapshot } = useSession();
  const ledger = useLedger();
  if (!snapshot) return null;
  const step = whatNow(snapshot, ledger.value);
  const said = screens.now;
  const words = step && stepWords(step, (entry) => entryTitle(entry, show), said);
  return (
    <SideSheet
      label={said.title}
      kicker={said.title}
      title={words?.title ?? screens.ledger.computing}
      why={words?.why ?? ''}
    >
      {step && (
        <>
          <Caution>{cautionOf(step, said)}</Caution>
          <StepActions step={step} />
        </>
      )}
    </SideSheet>
  );
}

function cautionOf(
  step: NonNullable<ReturnType<typeof whatNow>>,
  said: ReturnType<typeof useWords>['screens']['now'],
) {
  if (step.kind === 'change' || step.kind === 'next') return said.cautions.boost;
  return said.cautions.pull;
}
