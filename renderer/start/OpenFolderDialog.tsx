import { useState } from 'react';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { useWords } from '../hooks/use-words.tsx';
import { useOpening } from './use-opening.ts';

/** Opens a session folder by its path: a browser can't point at a folder on the machine of its host. */
export function OpenFolderDialog({ onClose }: { onClose: () => void }) {
  const { screens } = useWords();
  const { open, isOpening, problems } = useOpening();
  const [path, setPath] = useState('');
  const run = async () => {
    if (path.trim() !== '' && (await open(path.trim()))) onClose();
  };
  return (
    <Dialog
      title={screens.start.openFolder}
      onClose={onClose}
      isUnsaved={isMuchTyped([''], [path])}
      problems={problems}
      actions={
        <>
          <Button look="main" onPress={run} isDisabled={isOpening || path.trim() === ''}>
            {screens.start.open}
          </Button>
          <CancelButton />
        </>
      }
    >
      <TextField label={screens.start.folderPath} value={path} onChange={setPath} autoFocus />
    </Dialog>
  );
}
