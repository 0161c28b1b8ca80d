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
  for (const question of openingQuestions(snapshot)) {
    const { answer, leave } = askShared(host, question);
    void answer.finally(leave);
  }
}

/** What the first screen of a window asks about its session. */
export function openingQuestions(snapshot: Snapshot): readonly SharedQuestion<RequestName>[] {
  const view = firstView();
  if (view.screen !== 'bench') return [];
  const { before, after } = selectionOf(snapshot.session, view);
  if (!before || !after) return [];
  return [
    sharedQuestion(...verdictQuestion(snapshot, before.id, after.id, view.band)),
    sharedQuestion(...ledgerQuestion(snapshot, view.band)),
  ].filter((question) => question !== null);
}
