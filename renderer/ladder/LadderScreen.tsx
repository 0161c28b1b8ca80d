import { useState } from 'react';
import type { LadderPlace } from '../../core/ladder/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import { CantYet } from '../plan/CantYet.tsx';
import { type Sheet, useSheet } from '../sheets/use-sheet.ts';
import { LadderBody } from './LadderBody.tsx';
import styles from './LadderScreen.module.css';
import { StepSheet } from './StepSheet.tsx';
import { useLadder } from './use-ladder.ts';

/** What to change next and why, every step to the target, and the stop rules of each. */
export function LadderScreen() {
  const sheet = useSheet();
  return sheet ? <LadderOf sheet={sheet} /> : null;
}

function LadderOf({ sheet }: { sheet: Sheet }) {
  const { screens } = useWords();
  const { place: driven } = sheet.doc.conditions;
  const [place, setPlace] = useState<LadderPlace>(driven === 'dyno' ? 'dyno' : 'street');
  const [chosen, setChosen] = useState<number | null>(null);
  const found = useLadder(sheet.doc, place);
  const said = screens.ladder;
  if (!found?.ok)
    return (
      <main className={styles.main} id="main" tabIndex={-1}>
        {found ? (
          <CantYet title={said.cantYet} problems={found.problems} />
        ) : (
          <p>{screens.ledger.computing}</p>
        )}
      </main>
    );
  const { ladder, next } = found.value;
  const step = ladder.steps.find((s) => s.n === chosen) ?? ladder.steps[0] ?? null;
  return (
    <>
      <main className={styles.main} id="main" tabIndex={-1}>
        <LadderBody now={found.value} step={step} onChoose={setChosen} place={place} onPlace={setPlace} />
      </main>
      <StepSheet ladder={ladder} next={next} step={step} onTaken={() => setChosen(null)} />
    </>
  );
}
