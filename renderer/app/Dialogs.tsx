import { DecideDialog } from '../bench/DecideDialog.tsx';
import { DropPullDialog } from '../bench/DropPullDialog.tsx';
import { LeaningDialog } from '../bench/LeaningDialog.tsx';
import { RestorePullDialog } from '../bench/RestorePullDialog.tsx';
import { TrimPullDialog } from '../bench/TrimPullDialog.tsx';
import { ColumnsDialog } from '../columns/ColumnsDialog.tsx';
import { CommandPalette } from '../components/CommandPalette.tsx';
import { DerivedDialog } from '../derived/DerivedDialog.tsx';
import { EntryDialog } from '../entry/EntryDialog.tsx';
import { HistoryDialog } from '../history/HistoryDialog.tsx';
import { AssignDialog } from '../importing/AssignDialog.tsx';
import { ImportPathDialog } from '../importing/ImportPathDialog.tsx';
import { MoveLogsDialog } from '../importing/MoveLogsDialog.tsx';
import { MergeDialog } from '../move/MergeDialog.tsx';
import { PackDialog } from '../move/PackDialog.tsx';
import { SetAsideDialog } from '../move/SetAsideDialog.tsx';
import { UnpackDialog } from '../move/UnpackDialog.tsx';
import { QuickNote } from '../notes/QuickNote.tsx';
import { KeysDialog } from '../shell/KeysDialog.tsx';
import { UnitsDialog } from '../shell/UnitsDialog.tsx';
import { CreateDialog } from '../start/CreateDialog.tsx';
import { OpenFolderDialog } from '../start/OpenFolderDialog.tsx';
import { WatchDialog } from '../watch/WatchDialog.tsx';
import type { Action } from './actions.ts';
import { useDialog, useShow } from './view.tsx';

/** The one dialog that stands over the window, if any. */
export function Dialogs({ actions }: { actions: readonly Action[] }) {
  const dialog = useDialog();
  const show = useShow();
  const close = () => show({ dialog: null });
  switch (dialog?.type) {
    case 'palette':
      return <CommandPalette onClose={close} commands={actions.filter((a) => a.isEnabled)} />;
    case 'keys':
      return <KeysDialog actions={actions} onClose={close} />;
    case 'units':
      return <UnitsDialog onClose={close} />;
    case 'open-folder':
      return <OpenFolderDialog onClose={close} />;
    case 'pack':
      return <PackDialog onClose={close} />;
    case 'unpack':
      return <UnpackDialog onClose={close} />;
    case 'merge':
      return <MergeDialog onClose={close} />;
    case 'set-aside':
      return <SetAsideDialog file={dialog.file} onClose={close} />;
    case 'create':
      return <CreateDialog files={dialog.files} onClose={close} />;
    case 'assign':
      return <AssignDialog files={dialog.files} onClose={close} />;
    case 'entry':
      return <EntryDialog entryId={dialog.entryId} first={dialog.draft} onClose={close} />;
    case 'move-logs':
      return <MoveLogsDialog runId={dialog.runId} onClose={close} />;
    case 'columns':
      return <ColumnsDialog runId={dialog.runId} onClose={close} />;
    case 'watch':
      return <WatchDialog folder={dialog.folder ?? null} onClose={close} />;
    case 'import-path':
      return <ImportPathDialog onClose={close} />;
    case 'history':
      return <HistoryDialog onClose={close} />;
    case 'quick-note':
      return <QuickNote onClose={close} />;
    case 'derived':
      return <DerivedDialog onClose={close} />;
    case 'decide':
      return <DecideDialog onClose={close} />;
    case 'leaning':
      return <LeaningDialog onClose={close} />;
    case 'drop-pull':
      return <DropPullDialog runId={dialog.runId} pullId={dialog.pullId} onClose={close} />;
    case 'restore-pull':
      return <RestorePullDialog runId={dialog.runId} pullId={dialog.pullId} onClose={close} />;
    case 'trim-pull':
      return <TrimPullDialog runId={dialog.runId} pullId={dialog.pullId} onClose={close} />;
    default:
      return null;
  }
}
