import { useState } from 'react';
import type { Problems } from '../../core/result/index.ts';
import { Button } from '../components/Button.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { useAnswer } from '../hooks/use-answer.ts';
import { onlyFor, useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useHost } from '../host/HostProvider.tsx';
import styles from './HistoryDialog.module.css';
import { VersionList } from './VersionList.tsx';
import { VersionPage } from './VersionPage.tsx';

/** Earlier versions of the session: looked at without changing anything, brought back as an edit. */
export function HistoryDialog({ onClose }: { onClose: () => void }) {
  const { screens } = useWords();
  const host = useHost();
  const { snapshot, take } = useSession();
  const { say } = useToasts();
  const [chosen, setChosen] = useState<string | null>(null);
  const [problems, setProblems] = useState<Problems | null>(null);
  const revision = snapshot?.revision ?? 0;
  const list = useAnswer('history.list', snapshot && {}, revision);
  const versions = list.value?.versions ?? [];
  const file = chosen ?? versions.find((v) => v.unusable === null && !v.isCurrent)?.file ?? null;
  const looked = useAnswer('history.read', file === null ? null : { file }, revision, file ?? '');
  const said = screens.history;
  const canRestore = snapshot?.readOnly === null && looked.value !== null && !looked.value.version.isCurrent;
  const restore = async () => {
    if (file === null) return;
    const answer = await host.request('history.restore', { file, ...onlyFor(snapshot) });
    if (!answer.ok) return setProblems(answer.problems);
    take(answer.value);
    say(said.restored);
    onClose();
  };
  return (
    <Dialog
      title={said.title}
      onClose={onClose}
      shape="wide"
      problems={problems ?? list.problems}
      actions={
        <>
          <Button look="main" onPress={restore} isDisabled={!canRestore}>
            {said.restore}
          </Button>
          <Button onPress={onClose}>{screens.shell.close}</Button>
        </>
      }
    >
      <p>{said.intro}</p>
      {list.value && versions.length === 0 && <p>{said.none}</p>}
      {versions.length > 0 && (
        <div className={styles.both}>
          <VersionList versions={versions} chosen={file} onChoose={setChosen} />
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolled region must be reachable by keys */}
          <div className={styles.page} tabIndex={0}>
            {looked.problems && <ProblemList problems={looked.problems} />}
            {looked.value && <VersionPage looked={looked.value} />}
          </div>
        </div>
      )}
    </Dialog>
  );
}
