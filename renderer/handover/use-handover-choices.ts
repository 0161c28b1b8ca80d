import { type HandoverChoices, noHandoverChoices } from '../../core/session/index.ts';
import { useAhead } from '../hooks/use-ahead.ts';
import { useSession } from '../hooks/use-session.tsx';

const withPatch = (choices: HandoverChoices, patch: Partial<HandoverChoices>): HandoverChoices => ({
  ...choices,
  ...patch,
});

/** What the session has decided about its summary, and how to change it; each change can be undone. */
export function useHandoverChoices(): {
  readonly choices: HandoverChoices;
  /** Resolves when the choice is kept. Choices with one `joinKey` in a row are one step of undo. */
  readonly choose: (patch: Partial<HandoverChoices>, joinKey?: string) => Promise<boolean>;
} {
  const { snapshot, edit } = useSession();
  const [choices, put] = useAhead(snapshot?.session.handover ?? noHandoverChoices, withPatch);
  return {
    choices,
    choose: (patch, joinKey) => put(patch, () => edit({ type: 'handover.set', patch }, joinKey)),
  };
}
