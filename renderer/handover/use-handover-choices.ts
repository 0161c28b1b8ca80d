import { type HandoverChoices, noHandoverChoices } from '../../core/session/index.ts';
import { useSession } from '../hooks/use-session.tsx';

/** What the session has decided about its summary, and how to change it; each change can be undone. */
export function useHandoverChoices(): {
  readonly choices: HandoverChoices;
  /** Resolves when the choice is kept. Choices with one `joinKey` in a row are one step of undo. */
  readonly choose: (patch: Partial<HandoverChoices>, joinKey?: string) => Promise<boolean>;
} {
  const { snapshot, edit } = useSession();
  return {
    choices: snapshot?.session.handover ?? noHandoverChoices,
    choose: (patch, joinKey) => edit({ type: 'handover.set', patch }, joinKey),
  };
}
