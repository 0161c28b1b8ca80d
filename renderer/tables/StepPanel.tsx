import { useMemo, useState } from 'react';
import { planOf } from '../../core/injection/index.ts';
import type { Note, Problem } from '../../core/result/index.ts';
import type { Session } from '../../core/session/index.ts';
import {
  type CellMask,
  cellsIn,
  coveredCells,
  maskOf,
  type OperatingState,
  sprayOfPlan,
  writeTable,
} from '../../core/tables/index.ts';
import { Button } from '../components/Button.tsx';
import { Caution } from '../components/Caution.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { setupOf, sheetDocOf } from '../sheets/sheet-doc.ts';
import { remarkText } from './held-remarks.ts';
import { OutPart } from './OutPart.tsx';
import { StepFields } from './StepFields.tsx';
import type { StepQuestionState } from './step-question.ts';
import styles from './Tables.module.css';
import type { TableNow } from './use-table.ts';

export type StepPanelProps = {
  readonly session: Session;
  readonly of: TableNow;
  readonly chosen: CellMask;
  readonly onChoose: (mask: CellMask) => void;
  readonly traces: readonly (readonly OperatingState[])[];
  readonly question: StepQuestionState;
  readonly onStep: (text: string, cells: number) => Promise<void>;
  readonly onLimit: (limit: number | null) => void;
};

/** Which cells, how far, what holds them back, the caution, and the way out. */
export function StepPanel(props: StepPanelProps) {
  const { session, of, chosen, onChoose, traces, question, onStep } = props;
  const words = useWords();
  const { screens, note } = words;
  const { snapshot } = useSession();
  const said = screens.tables;
  const { table, now, ambientPressure } = of;
  const [told, setTold] = useState<{ line: string; notes: readonly Note[]; problems: readonly Problem[] }>({
    line: '',
    notes: [],
    problems: [],
  });
  const count = cellsIn(chosen);
  const outcome = useMemo(
    () => (count > 0 ? question.outcome(of, chosen) : null),
    [question, of, chosen, count],
  );
  const cover = () => {
    const plan = planOf(setupOf(sheetDocOf(session)));
    if (!plan.ok) return setTold({ line: said.coverNeeds, notes: [], problems: plan.problems });
    const driven = traces.flat();
    const found = coveredCells(
      now,
      table.axes,
      ambientPressure,
      sprayOfPlan(plan.value),
      traces.length > 0 ? driven : null,
    );
    const cells = cellsIn(found.covered);
    const notes: Note[] = [];
    if (cells === 0) notes.push({ code: 'tables/nothing-covered', facts: {} });
    if (found.notDriven > 0)
      notes.push({ code: 'tables/covered-not-driven', facts: { cells: found.notDriven } });
    if (found.short > 0) notes.push({ code: 'tables/fluid-was-short', facts: { cells: found.short } });
    setTold({ line: said.coveredBy(cells, traces.length), notes, problems: [] });
    onChoose(found.covered);
  };
  const stepped = outcome?.ok ? outcome.value : null;
  const remarks = (stepped?.notes ?? []).filter((n) => n.code !== 'tables/check-before-writing');
  const canStep = stepped !== null && stepped.changes.length > 0 && snapshot?.readOnly === null;
  return (
    <SideSheet label={said.title} kicker={said.title} title={said.chosen(count)} why={said.chosenWhy}>
      <div className={styles.buttons}>
        <Button isWide onPress={cover}>
          {said.cover}
        </Button>
        {count > 0 && (
          <Button look="plain" onPress={() => onChoose(maskOf(now, () => false))}>
            {said.clear}
          </Button>
        )}
      </div>
      <div className={styles.notes} aria-live="polite">
        {told.line !== '' && <p>{told.line}</p>}
        {told.notes.map((n) => (
          <p key={n.code}>{note(n)}</p>
        ))}
        {told.problems.length > 0 && <ProblemList problems={told.problems} />}
      </div>
      <StepFields of={of} question={question} onLimit={props.onLimit} />
      {count > 0 && (
        <div className={styles.notes} aria-live="polite">
          {outcome && !outcome.ok && <ProblemList problems={outcome.problems} />}
          {remarks.map((n) => (
            <p key={n.code}>{remarkText(n, stepped?.held ?? [], of, words)}</p>
          ))}
        </div>
      )}
      <Caution>{said.cautions[table.kind]}</Caution>
      <Button
        look="main"
        isWide
        isDisabled={!canStep}
        onPress={() => stepped && void onStep(writeTable(stepped.table), stepped.changes.length)}
      >
        {said.doStep(stepped?.changes.length ?? 0)}
      </Button>
      <OutPart session={session} of={of} />
    </SideSheet>
  );
}
