import { useState } from 'react';
import type { Session } from '../../core/session/index.ts';
import { emptyDraft } from '../entry/change-draft.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { AssignFields } from '../importing/AssignFields.tsx';
import { guessTargets } from '../importing/assign-files.ts';
import { type Incoming, namedLog } from '../importing/incoming.ts';
import { tasksOf } from '../importing/tasks-of.ts';
import { useImportAll } from '../importing/use-imports.tsx';

/** The baseline of a session that is not there yet, to choose from before it is. */
const baselineToBe: Session['ledger'] = [
  {
    id: 'baseline',
    kind: 'baseline',
    title: '',
    change: null,
    against: null,
    runs: [],
    state: 'kept',
    note: '',
    privateNote: '',
    createdAt: '1970-01-01T00:00:00.000Z',
    conditions: null,
  },
];

/** Files with their places in a session that is being created. */
export function useDraftAssign(files: readonly Incoming[]) {
  const { edit } = useSession();
  const importAll = useImportAll();
  const [targets, setTargets] = useState(() => guessTargets(files, baselineToBe, null));
  const [draft, setDraft] = useState(emptyDraft);
  return {
    files,
    targets,
    setTargets,
    draft,
    setDraft,
    importInto: async (session: Session) => {
      const baselineId = session.ledger[0]?.id ?? 'none';
      const { tasks, edits } = tasksOf(
        files,
        targets.map((t) => (t === 'baseline' ? baselineId : t)),
        draft,
      );
      if (edits.length > 0 && !(await edit(edits))) return;
      await importAll(tasks);
    },
  };
}

export function DraftAssign({ assign }: { assign: ReturnType<typeof useDraftAssign> }) {
  const { screens } = useWords();
  return (
    <AssignFields
      logs={assign.files.map(namedLog)}
      ledger={baselineToBe}
      targets={assign.targets}
      onTargets={assign.setTargets}
      draft={assign.draft}
      onDraft={assign.setDraft}
      noneLabel={screens.importing.toNone}
    />
  );
}
