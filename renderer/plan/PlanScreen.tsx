import type { ReactNode } from 'react';
import { useWords } from '../hooks/use-words.tsx';
import { FieldProblems } from '../sheets/FieldProblems.tsx';
import { useSheet } from '../sheets/use-sheet.ts';
import { CantYet } from './CantYet.tsx';
import { PlanBody } from './PlanBody.tsx';
import { PlanInputs } from './PlanInputs.tsx';
import styles from './PlanScreen.module.css';
import { PlanSheet } from './PlanSheet.tsx';
import { usePlan } from './use-plan.ts';

/** Where the spray starts and where it is full, answered in a sentence and drawn; inputs left, the fit right. */
export function PlanScreen({ nav }: { nav: ReactNode }) {
  const sheet = useSheet();
  return sheet ? <PlanOf sheet={sheet} nav={nav} /> : null;
}

function PlanOf({ sheet, nav }: { sheet: NonNullable<ReturnType<typeof useSheet>>; nav: ReactNode }) {
  const { screens } = useWords();
  const { plan, setup } = usePlan(sheet.doc);
  return (
    <FieldProblems of={plan} isMissingListed>
      <div className={styles.left}>
        {nav}
        <PlanInputs sheet={sheet} plan={plan.ok ? plan.value : null} />
      </div>
      <main className={styles.main} id="main" tabIndex={-1}>
        {plan.ok ? (
          <PlanBody plan={plan.value} setup={setup} sheet={sheet} />
        ) : (
          <CantYet title={screens.plan.cantYet} problems={plan.problems} />
        )}
      </main>
      <PlanSheet setup={setup} plan={plan.ok ? plan.value : null} />
    </FieldProblems>
  );
}
