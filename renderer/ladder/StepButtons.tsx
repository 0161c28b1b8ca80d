import { useState } from 'react';
import type { LadderStep, NextStep } from '../../core/ladder/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { newEntry } from '../entry/change-draft.ts';
import { DropButton } from '../entry/DropButton.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { AgainChoice, repeatable } from './AgainChoice.tsx';
import { useStepTitle } from './use-step-title.ts';

export type StepButtonsProps = {
  readonly next: NextStep;
  readonly step: LadderStep | null;
  readonly onTaken: () => void;
};

/** One change at a time: only the first step can be taken, and only once nothing before it is open. */
export function StepButtons({ next, step, onTaken }: StepButtonsProps) {
  const { screens } = useWords();
  const show = useShow();
  const { snapshot, edit, undo } = useSession();
  const { say } = useToasts();
  const titleOf = useStepTitle();
  const [again, setAgain] = useState<string | null>(null);
  const said = screens.ladder;
  const { last } = next.ladder.standing;
  const openBench = () => show({ screen: 'bench', beforeId: null, afterId: null });
  if (next.kind === 'make-step' && step) {
    if (step.n !== next.step?.n) return <p>{said.notYet(next.step?.n ?? 1)}</p>;
    const { title, draft: planned } = titleOf(step);
    const ledger = snapshot?.session.ledger ?? [];
    const isAgain = step.kind === 'nothing';
    const repeated = isAgain ? (again ?? repeatable(ledger)[0]?.id ?? null) : null;
    const draft = { ...planned, against: repeated ?? planned.against };
    const take = async () => {
      if (!(await edit({ type: 'entry.add', entry: newEntry(draft) }))) return;
      say(said.taken(title), { label: screens.shell.undo, run: () => void undo() });
      onTaken();
    };
    return (
      <>
        {isAgain && <AgainChoice ledger={ledger} chosen={repeated} onChoose={setAgain} />}
        <Button look="main" isWide onPress={() => void take()}>
          {said.take}
        </Button>
        <p>{said.takeWhy}</p>
      </>
    );
  }
  if (next.kind === 'done')
    return (
      <Button look="main" isWide onPress={() => show({ screen: 'handover' })}>
        {said.openHandover}
      </Button>
    );
  const isBack = next.kind === 'go-back' && last !== null && last.kind !== 'baseline';
  return (
    <>
      <p>{said.openFirst}</p>
      {isBack && <DropButton entry={last} look="main" />}
      <Button look={isBack ? 'second' : 'main'} isWide onPress={openBench}>
        {said.openBench}
      </Button>
    </>
  );
}
