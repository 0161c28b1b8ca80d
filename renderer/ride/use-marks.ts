import { useRef, useState } from 'react';
import type { PullSummary } from '../../core/contract/index.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';

/**
 * Marking the last pull as bad, and taking back what was marked here. Nothing that was done elsewhere can be
 * undone from the passenger seat by a key that was hit by chance.
 */
export function useMarks(last: PullSummary | null) {
  const { screens } = useWords();
  const { edit } = useSession();
  const said = screens.ride;
  const [message, setMessage] = useState('');
  const marks = useRef<{ runId: string; at_s: number }[]>([]);
  const send = (at: { runId: string; at_s: number }, action: 'drop' | 'restore', reason: string) =>
    edit({
      type: 'pull.edit',
      runId: at.runId,
      edit: { at_s: at.at_s, action, from_s: null, to_s: null, reason },
    });
  const mark = async () => {
    if (!last) return setMessage(said.nothingToMark);
    const at = { runId: last.runId, at_s: (last.start_s + last.end_s) / 2 };
    const isMarked = marks.current.some((m) => m.runId === at.runId && m.at_s === at.at_s);
    if (isMarked || last.droppedBecause !== null) return setMessage(said.alreadyMarked);
    // Before the answer: the key that takes it back may come first.
    marks.current.push(at);
    setMessage(said.marked);
    if (await send(at, 'drop', said.markReason)) return;
    marks.current = marks.current.filter((m) => m !== at);
    setMessage('');
  };
  const undo = async () => {
    const at = marks.current.pop();
    if (!at) return setMessage(said.nothingToUndo);
    setMessage(said.takenBack);
    if (await send(at, 'restore', '')) return;
    marks.current.push(at);
    setMessage('');
  };
  return { message, mark: () => void mark(), undo: () => void undo() };
}
