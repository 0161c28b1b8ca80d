import { useState } from 'react';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { useWords } from '../hooks/use-words.tsx';
import { useOpening } from '../start/use-opening.ts';
import { pastedPaths } from './pasted-paths.ts';
import { useTakeFiles } from './use-take-files.ts';

/** Takes logs by their paths on the host's machine. */
export function ImportPathDialog({ onClose }: { onClose: () => void }) {
  const { screens } = useWords();
  const show = useShow();
  const takeFiles = useTakeFiles();
  const { open, problems } = useOpening();
  const [text, setText] = useState('');
  const [isTried, setTried] = useState(false);
  const said = screens.watch;
  const named = pastedPaths(text);
  const run = async () => {
    setTried(true);
    if (named?.type === 'logs') {
      onClose();
      takeFiles(named.logs);
    } else if (named?.type === 'folder') show({ dialog: { type: 'watch', folder: named.folder } });
    else if (named && (await open(named.folder))) onClose();
  };
  return (
    <Dialog
      title={said.importPath}
      onClose={onClose}
      isUnsaved={isMuchTyped([''], [text])}
      problems={problems}
      actions={
        <>
          <Button look="main" onPress={run} isDisabled={text.trim() === ''}>
            {screens.importing.import}
          </Button>
          <CancelButton />
        </>
      }
    >
      <TextField
        label={said.paths}
        rows={3}
        value={text}
        onChange={setText}
        autoFocus
        hint={said.importPathIntro}
        error={isTried && !named ? said.noPath : undefined}
      />
    </Dialog>
  );
}
