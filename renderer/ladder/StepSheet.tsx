import type { Ladder, LadderStep, NextStep, Range } from '../../core/ladder/index.ts';
import type { ShownKind } from '../../core/units/index.ts';
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
  const pump = step?.gates.find((g) => g.quantity === 'fuelPump')?.predicted?.[1] ?? null;
  const explained = (id: string) =>
    step?.explanations.find((e) => e.id === id) ?? ladder.explanations.find((e) => e.id === id);
  const fact = (name: string, value: string | null, id: string) =>
    value === null
      ? []
      : [{ name, value: <WhereFrom value={value} what={name} explanation={explained(id)} /> }];
  const range = (value: Range | null, kind: ShownKind, digits: number) =>
    value && said.between(show.bare(value[0], kind, digits), show.quantity(value[1], kind, digits));
  const number = (value: number | null, kind: ShownKind, digits?: number) =>
    value === null || !Number.isFinite(value) ? null : show.quantity(value, kind, digits);
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
            ...fact(said.powerAfter, range(step.predicted.power, 'power', 0), 'ladder/predicted-power'),
            ...fact(
              said.roomAfter,
              range(step.predicted.knockHeadroom_rad, 'angle', 1),
              'charge/knock-headroom',
            ),
            ...fact(
              said.fluidAtPeak,
              number(step.predicted.fluidFlow || null, 'volumeFlow'),
              'delivery/nozzle-flow',
            ),
            ...fact(said.duty, number(step.predicted.injectorDuty, 'share', 0), 'ladder/injector-duty'),
            ...fact(said.gates.fuelPump, number(pump, 'share', 0), 'ladder/fuel-pump'),
            ...fact(
              said.intakeAtPort,
              number(step.predicted.intake, 'temperature', 0),
              step.predicted.fluidFlow > 0 ? 'charge/evaporation' : 'charge/cooler',
            ),
            ...fact(
              said.manifold,
              number(step.predicted.manifoldPressure, 'pressure'),
              'ladder/manifold-pressure',
            ),
          ]}
        />
      )}
      {step?.cells?.inTable && (
        <p>{screens.tables.ofStep(step.cells.inTable.cells.length, step.cells.inTable.table)}</p>
      )}
      {cautions.map((n) => (
        <Caution key={n.code}>{note(n)}</Caution>
      ))}
      <StepButtons next={next} step={step} onTaken={onTaken} />
    </SideSheet>
  );
}
