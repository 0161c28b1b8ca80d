import { type HandoverChoices, noHandoverChoices } from '../../core/session/index.ts';
import { useSession } from '../hooks/use-session.tsx';

/** What the session has decided about its summary, and how to change it; each change can be undone. */
export function useHandoverChoices(): {
  readonly choices: HandoverChoices;
  readonly choose: (patch: Partial<HandoverChoices>) => void;
} {
  const { snapshot, edit } = useSession();
  return {
    choices: snapshot?.session.handover ?? noHandoverChoices,
    choose: (patch) => void edit({ type: 'handover.set', patch }),
  };
}
