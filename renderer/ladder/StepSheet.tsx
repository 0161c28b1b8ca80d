import type { Ladder, LadderStep, NextStep } from '../../core/ladder/index.ts';
import { Caution } from '../components/Caution.tsx';
import { FactList } from '../components/FactList.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import { StepButtons } from './StepButtons.tsx';
import { useStepTitle } from './use-step-title.ts';

export type StepSheetProps = {
  readonly ladder: Ladder;
  readonly next: NextStep;
  readonly step: LadderStep | null;
  readonly onTaken: () => void;
};

/** The chosen step: why, what it should bring, its cautions, and taking it where it is its turn. */
export function StepSheet({ ladder, next, step, onTaken }: StepSheetProps) {
  const { screens, show, note } = useWords();
  const titleOf = useStepTitle();
  const said = screens.ladder;
  // What is open comes before any step, so its caution does too.
  const isTurn = next.kind === 'make-step' || next.kind === 'drive-baseline';
  const cautions = [...(isTurn ? [] : next.cautions), ...(step?.cautions ?? [])];
  const why = step?.reasons.map(note).join(' ') ?? '';
  const explained = (id: string) => ladder.explanations.find((e) => e.id === id);
  const { power, knockHeadroom_rad: room, fluidFlow } = step?.predicted ?? {};
  return (
    <SideSheet
      label={said.title}
      kicker={step ? said.stepOf(step.n, ladder.steps.length) : said.title}
      title={step ? titleOf(step).title : note(next.now)}
      why={why}
    >
      {step && (
        <FactList
          facts={[
            ...(power
              ? [
                  {
                    name: said.powerAfter,
                    value: (
                      <WhereFrom
                        value={said.between(
                          show.bare(power[0], 'power', 0),
                          show.quantity(power[1], 'power', 0),
                        )}
                        what={said.powerAfter}
                        explanation={explained('ladder/predicted-power')}
                      />
                    ),
                  },
                ]
              : []),
            ...(room
              ? [
                  {
                    name: said.roomAfter,
                    value: (
                      <WhereFrom
                        value={said.between(
                          show.bare(room[0], 'angle', 1),
                          show.quantity(room[1], 'angle', 1),
                        )}
                        what={said.roomAfter}
                        explanation={explained('charge/knock-headroom')}
                      />
                    ),
                  },
                ]
              : []),
            ...(fluidFlow
              ? [
                  {
                    name: said.fluidAtPeak,
                    value: (
                      <WhereFrom
                        value={show.quantity(fluidFlow, 'volumeFlow')}
                        what={said.fluidAtPeak}
                        explanation={explained('delivery/nozzle-flow')}
                      />
                    ),
                  },
                ]
              : []),
          ]}
        />
      )}
      {cautions.map((n) => (
        <Caution key={n.code}>{note(n)}</Caution>
      ))}
      <StepButtons next={next} step={step} onTaken={onTaken} />
    </SideSheet>
  );
}
