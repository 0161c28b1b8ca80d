import { useCallback } from 'react';
import { useShow } from '../app/view.tsx';
import { useSelection } from '../hooks/use-selection.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useHost } from '../host/HostProvider.tsx';
import type { Incoming } from './incoming.ts';
import { useImportAll } from './use-imports.tsx';

/**
 * What happens with files, however they came: a new session where none is open, straight into the entry that
 * waits for its log where there is no doubt, and a question otherwise.
 */
export function useTakeFiles(): (files: readonly Incoming[]) => void {
  const { snapshot } = useSession();
  const host = useHost();
  const show = useShow();
  const { after } = useSelection();
  const importAll = useImportAll();
  return useCallback(
    (files) => {
      if (files.length === 0) return;
      if (!snapshot) return show({ dialog: { type: 'create', files } });
      // While the question stands, or the first bytes are on their way.
      const sizes = files.map((file) => (file instanceof File ? file.size : 0));
      void host.request('runs.expect', { size_bytes: Math.max(...sizes) });
      const [only] = files;
      if (files.length === 1 && only && after && after.runs.length === 0) {
        void importAll([{ file: only, entryId: after.id }]);
        return;
      }
      show({ dialog: { type: 'assign', files } });
    },
    [host, snapshot, show, after, importAll],
  );
}
