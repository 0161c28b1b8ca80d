import { useMemo } from 'react';
import { type Plan, planOf, type Setup } from '../../core/injection/index.ts';
import type { Result } from '../../core/result/index.ts';
import { useLoggedFluid } from '../hooks/use-logged-fluid.ts';
import { type SheetDoc, setupOf } from '../sheets/sheet-doc.ts';

/** The plan of what is typed now, in the frame in which it is typed; with the fluid that the logs show. */
export function usePlan(doc: SheetDoc): { plan: Result<Plan>; setup: Setup } {
  const logged = useLoggedFluid();
  const fluid = logged?.fluid ?? null;
  const pulls = logged?.pulls ?? 0;
  return useMemo(() => {
    const setup = setupOf(doc, fluid === null ? null : { fluid, pulls });
    return { plan: planOf(setup), setup };
  }, [doc, fluid, pulls]);
}
