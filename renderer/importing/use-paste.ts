import { useEffect } from 'react';
import { typingFields } from '../app/use-key-actions.ts';
import { useShow } from '../app/view.tsx';
import { afterTyped } from '../components/leave-guard.ts';
import { useOpening } from '../start/use-opening.ts';
import { pastedPaths } from './pasted-paths.ts';
import { useTakeFiles } from './use-take-files.ts';

/** A path pasted anywhere but into a field: logs are taken, a folder is offered for watching, a session opens. */
export function usePaste(): void {
  const show = useShow();
  const takeFiles = useTakeFiles();
  const { open } = useOpening();
  useEffect(() => {
    const onPaste = (event: ClipboardEvent) => {
      const target = event.target instanceof Element ? event.target : null;
      if (event.defaultPrevented || target?.closest(typingFields)) return;
      const files = Array.from(event.clipboardData?.files ?? []);
      if (files.length > 0) {
        event.preventDefault();
        afterTyped(() => takeFiles(files));
        return;
      }
      const pasted = pastedPaths(event.clipboardData?.getData('text/plain') ?? '');
      if (!pasted) return;
      event.preventDefault();
      afterTyped(() => {
        if (pasted.type === 'logs') takeFiles(pasted.logs);
        else if (pasted.type === 'session') void open(pasted.folder);
        else show({ dialog: { type: 'watch', folder: pasted.folder } });
      });
    };
    window.addEventListener('paste', onPaste);
    return () => window.removeEventListener('paste', onPaste);
  }, [show, takeFiles, open]);
}
