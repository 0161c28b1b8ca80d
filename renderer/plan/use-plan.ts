import { useMemo } from 'react';
import { type Plan, planOf, type Setup } from '../../core/injection/index.ts';
import type { Result } from '../../core/result/index.ts';
import { type SheetDoc, setupOf } from '../sheets/sheet-doc.ts';

/** The plan of what is typed now, in the frame in which it is typed. */
export function usePlan(doc: SheetDoc): { plan: Result<Plan>; setup: Setup } {
  return useMemo(() => {
    const setup = setupOf(doc);
    return { plan: planOf(setup), setup };
  }, [doc]);
}
