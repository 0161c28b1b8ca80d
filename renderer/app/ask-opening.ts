import type { HostClient, RequestName, Snapshot } from '../../core/contract/index.ts';
import { ledgerQuestion, verdictQuestion } from '../hooks/questions.ts';
import { sharedQuestion } from '../hooks/use-answer.ts';
import { askShared, type SharedQuestion } from '../host/ask-shared.ts';
import { selectionOf } from './selection.ts';
import { firstView } from './view.tsx';

/**
 * Asks for what a window shows when it opens on a session, before anything of it is drawn: the host works while
 * the screen does, and the parts of the screen find the answers come.
 */
export function askOpening(host: HostClient, snapshot: Snapshot): void {
  const view = firstView();
  if (view.screen !== 'bench') return;
  const { before, after } = selectionOf(snapshot.session, view);
  if (!before || !after) return;
  hold(host, sharedQuestion(...verdictQuestion(snapshot, before.id, after.id, view.band)));
  hold(host, sharedQuestion(...ledgerQuestion(snapshot, view.band)));
}

function hold<N extends RequestName>(host: HostClient, question: SharedQuestion<N> | null): void {
  if (!question) return;
  const { answer, leave } = askShared(host, question);
  void answer.finally(leave);
}
