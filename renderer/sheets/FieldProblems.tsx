import { createContext, type ReactNode, useContext } from 'react';
import type { Problem, Result } from '../../core/result/index.ts';
import field from '../components/Field.module.css';
import { useWords } from '../hooks/use-words.tsx';

const ProblemsContext = createContext<readonly Problem[]>([]);
const QuietContext = createContext(false);

export type FieldProblemsProps = {
  readonly of: Result<unknown>;
  /** What is missing stands in a list beside the fields: an empty field does not say it again. */
  readonly isMissingListed?: boolean;
  readonly children: ReactNode;
};

/** What is wrong with the sheet now, for each field to show its own. */
export function FieldProblems({ of, isMissingListed = false, children }: FieldProblemsProps) {
  return (
    <ProblemsContext value={of.ok ? [] : of.problems}>
      <QuietContext value={isMissingListed}>{children}</QuietContext>
    </ProblemsContext>
  );
}

/** Whether an empty field leaves it to the list beside it to say what is missing. */
export const useMissingListed = (): boolean => useContext(QuietContext);

/** What is wrong with one field and how to mend it; undefined where nothing is. */
export function useFieldProblem(path: string): string | undefined {
  const { problem } = useWords();
  const found = useContext(ProblemsContext).filter((p) => p.where?.field === path);
  if (found.length === 0) return undefined;
  return found
    .map((p) => {
      const said = problem({ ...p, where: {} } as Problem);
      return `${said.message} ${said.remedy}`;
    })
    .join(' ');
}

/** The same as a line of its own, under a list or a choice. */
export function FieldFault({ path }: { path: string }) {
  const said = useFieldProblem(path);
  if (said === undefined) return null;
  return (
    <p className={field.error} role="alert">
      {said}
    </p>
  );
}
