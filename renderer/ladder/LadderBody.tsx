import { type LadderPlace, type LadderStep, ladderPlaces } from '../../core/ladder/index.ts';
import { Headline } from '../bench/Headline.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { GateTable } from './GateTable.tsx';
import styles from './LadderScreen.module.css';
import { StepTable } from './StepTable.tsx';
import type { LadderNow } from './use-ladder.ts';
import { useStepTitle } from './use-step-title.ts';

export type LadderBodyProps = {
  readonly now: LadderNow;
  readonly step: LadderStep | null;
  readonly onChoose: (n: number) => void;
  readonly place: LadderPlace;
  readonly onPlace: (place: LadderPlace) => void;
};

export function LadderBody({ now, step, onChoose, place, onPlace }: LadderBodyProps) {
  const { screens, show, note } = useWords();
  const titleOf = useStepTitle();
  const said = screens.ladder;
  const { ladder, next } = now;
  const { routine } = ladder;
  const tone = next.kind === 'stop' || next.kind === 'go-back' ? { tone: 'loss' as const } : {};
  return (
    <div className={styles.body}>
      <Headline parts={[{ text: note(next.now), ...tone }]} second={next.why.map(note).join(' ')} />
      <div>
        <Segmented
          label={said.place}
          options={ladderPlaces.map((id) => ({ id, label: said.places[id] }))}
          value={place}
          onChange={onPlace}
        />
        <p className={styles.soft}>
          {said.routine(
            routine.pulls,
            routine.bothWays,
            show.quantity(routine.coolDown, 'time', 0),
            show.quantity(routine.intakeWindow, 'temperatureDifference', 0),
            show.quantity(routine.coolantWindow, 'temperatureDifference', 0),
            routine.returnAfter,
          )}
        </p>
      </div>
      {ladder.steps.length > 0 && (
        <section>
          <h2>{said.steps}</h2>
          <StepTable
            steps={ladder.steps}
            chosen={step?.n ?? null}
            explanations={ladder.explanations}
            onChoose={onChoose}
          />
        </section>
      )}
      {step && (
        <section>
          <h2>{said.gatesOf(step.n, titleOf(step).title)}</h2>
          <GateTable gates={step.gates} explanations={[...step.explanations, ...ladder.explanations]} />
          <p className={styles.soft}>{said.gatesWhy}</p>
        </section>
      )}
      {next.gates.some((g) => g.measured !== null) && (
        <section>
          <h2>{said.lastGates}</h2>
          <GateTable gates={next.gates} isDriven />
        </section>
      )}
      <section>
        <h2>{said.ends}</h2>
        <ul className={styles.remarks}>
          {ladder.notes.map((n) => {
            const text = note(n);
            return <li key={text}>{text}</li>;
          })}
        </ul>
      </section>
    </div>
  );
}
