import { useAnswer } from './use-answer.ts';
import { useSession } from './use-session.tsx';

/** Fluid of the newest entry that sprayed, as its logs show it; null while nobody knows. */
export function useLoggedFluid() {
  const { snapshot } = useSession();
  const { value } = useAnswer(
    'fluid.logged',
    snapshot ? {} : null,
    snapshot?.revision ?? 0,
    snapshot?.folder,
  );
  return value;
}
