import { useState } from 'react';
import type { Problems } from '../../core/result/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { usePreferences } from '../hooks/use-preferences.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useWatch } from './use-watch.tsx';
import { WatchedLogs } from './WatchedLogs.tsx';

/** Which folder to watch, what came from it, and the way to stop. */
export function WatchDialog({ folder, onClose }: { folder: string | null; onClose: () => void }) {
  const { screens, show } = useWords();
  const { preferences } = usePreferences();
  const { snapshot } = useSession();
  const { watch, start, stop } = useWatch();
  const [opened] = useState(folder ?? watch?.folder ?? preferences.watched);
  const [path, setPath] = useState(opened);
  const [problems, setProblems] = useState<Problems | null>(null);
  const said = screens.watch;
  const wanted = path.trim();
  const ledger = snapshot?.session.ledger ?? [];
  const newest = ledger.findLast((e) => e.state === 'kept');
  const isThis = watch?.folder === wanted;
  const run = async () => {
    if (wanted === '' || isThis) return;
    const answer = await start(wanted);
    setProblems(answer.ok ? null : answer.problems);
    if (answer.ok) onClose();
  };
  return (
    <Dialog
      title={said.title}
      onClose={onClose}
      isUnsaved={!isThis && isMuchTyped([opened], [path])}
      problems={problems}
      actions={
        <>
          <Button look="main" onPress={run} isDisabled={wanted === '' || isThis}>
            {watch ? said.change : said.start}
          </Button>
          {watch && <Button onPress={() => void stop().then(onClose)}>{said.stop}</Button>}
          <CancelButton />
        </>
      }
    >
      <p>{said.intro}</p>
      <TextField label={said.folder} value={path} onChange={setPath} autoFocus hint={said.folderHint} />
      {newest && <p>{said.joins(`${ledger.indexOf(newest)} · ${entryTitle(newest, show)}`)}</p>}
      {watch && <WatchedLogs watch={watch} />}
    </Dialog>
  );
}
