import { type Selection, selectionOf } from '../app/selection.ts';
import { useView } from '../app/view.tsx';
import { useSession } from './use-session.tsx';

/** The two entries that the bench shows. */
export function useSelection(): Selection {
  const view = useView();
  const { snapshot } = useSession();
  return snapshot ? selectionOf(snapshot.session, view) : { before: null, after: null };
}
