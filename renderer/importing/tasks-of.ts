import type { SessionEdit } from '../../core/session/index.ts';
import { type ChangeDraft, newEntry } from '../entry/change-draft.ts';
import { newChange, noEntry, type Target } from './assign-files.ts';
import type { Incoming } from './incoming.ts';
import type { ImportTask } from './use-imports.tsx';

/** Imports for files with their targets, and the edit that adds the change where one of them needs it. */
export function tasksOf(
  files: readonly Incoming[],
  targets: readonly Target[],
  draft: ChangeDraft,
): { tasks: ImportTask[]; edits: SessionEdit[]; newId: string | null } {
  const added = targets.includes(newChange) ? newEntry(draft) : null;
  const tasks = files.map((file, i): ImportTask => {
    const target = targets[i] ?? noEntry;
    if (target === noEntry) return { file, entryId: null };
    return { file, entryId: target === newChange ? (added?.id ?? null) : target };
  });
  return { tasks, edits: added ? [{ type: 'entry.add', entry: added }] : [], newId: added?.id ?? null };
}
