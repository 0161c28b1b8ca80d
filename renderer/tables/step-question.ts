import { useMemo, useState } from 'react';
import type { Result } from '../../core/result/index.ts';
import { fail } from '../../core/result/index.ts';
import type { SessionTable } from '../../core/session/index.ts';
import {
  type CellMask,
  cellsIn,
  type HeldCell,
  type SteppedTable,
  stepCells,
  type TableUnit,
} from '../../core/tables/index.ts';
import { readNumber } from '../../core/words/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import type { TableNow } from './use-table.ts';

/** A step as practice takes it far from a limit (common practice); a mixture is stepped richer. */
const usualStep: { readonly [U in TableUnit]: number } = {
  deg: 1,
  bar: 0.1,
  kPa: 10,
  psi: 1.5,
  lambda: -0.01,
  AFR: -0.1,
};

export type StepQuestionState = {
  readonly texts: { readonly step: string; readonly neighbours: string };
  readonly edge: number;
  readonly setStep: (text: string) => void;
  readonly setNeighbours: (text: string) => void;
  readonly setEdge: (cells: number) => void;
  /** Null where no number stands. */
  readonly step: number | null;
  readonly neighbours: number | null;
  readonly outcome: (of: TableNow, chosen: CellMask) => Result<SteppedTable>;
  /** Cells that would get less than asked for. */
  readonly heldOf: (of: TableNow, chosen: CellMask) => readonly HeldCell[];
};

/** What is asked of the chosen cells: how far, how soft at the edge, how steep at most. */
export function useStepQuestion(table: SessionTable): StepQuestionState {
  const { show } = useWords();
  const { language } = show;
  const [stepText, setStep] = useState(() => {
    const text = `${usualStep[table.unit]}`.replace('-', '−');
    return language === 'de' ? text.replace('.', ',') : text;
  });
  const [neighboursText, setNeighbours] = useState('');
  const [edge, setEdge] = useState(1);
  return useMemo(() => {
    const step = readNumber(stepText, language);
    const neighbours = neighboursText.trim() === '' ? null : readNumber(neighboursText, language);
    const outcome = (of: TableNow, chosen: CellMask): Result<SteppedTable> => {
      if (step !== null && step > 0 && of.limit === null)
        return fail({ code: 'tables/no-limit', facts: { kind: of.table.kind } });
      return stepCells(of.now, {
        covered: chosen,
        step: step ?? 0,
        edge,
        limit: (step ?? 0) > 0 ? of.limit : null,
        neighbourLimit: neighbours,
        since: of.before,
      });
    };
    return {
      texts: { step: stepText, neighbours: neighboursText },
      edge,
      setStep,
      setNeighbours,
      setEdge,
      step,
      neighbours,
      outcome,
      heldOf: (of, chosen) => {
        const found = cellsIn(chosen) > 0 ? outcome(of, chosen) : null;
        return found?.ok ? found.value.held : [];
      },
    };
  }, [stepText, neighboursText, edge, language]);
}
