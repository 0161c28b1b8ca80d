import { useMemo } from 'react';
import { pullsOf } from '../bench/PullsTable.tsx';
import { withToggled } from '../bench/toggled.ts';
import { useEntries } from '../hooks/use-entries.tsx';
import { usePreferences } from '../hooks/use-preferences.tsx';
import { useSelection } from '../hooks/use-selection.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useTakeFiles } from '../importing/use-take-files.ts';
import { useWatch } from '../watch/use-watch.tsx';
import { type Action, screenKeys } from './actions.ts';
import { chooseFiles } from './choose-files.ts';
import { screenNames, useShow, useView } from './view.tsx';

/** Everything that can be done now. */
export function useActions(): readonly Action[] {
  const { screens } = useWords();
  const view = useView();
  const show = useShow();
  const { snapshot, undo, redo, close } = useSession();
  const { ledger: entries, setState } = useEntries();
  const { before, after } = useSelection();
  const { set } = usePreferences();
  const takeFiles = useTakeFiles();
  const { watch, stop } = useWatch();

  return useMemo(() => {
    const said = screens.shell.actions;
    const ledger = snapshot?.session.ledger ?? [];
    const isOpen = snapshot !== null;
    const at = after ? ledger.findIndex((e) => e.id === after.id) : -1;
    const step = (by: number) => {
      const next = ledger[Math.min(ledger.length - 1, Math.max(0, at + by))];
      if (next) show({ afterId: next.id, beforeId: null, screen: view.screen === 'ride' ? 'ride' : 'bench' });
    };
    const stepBefore = (by: number) => {
      const from = before ? ledger.indexOf(before) : at;
      const next = ledger.filter((e) => e !== after)[
        Math.min(ledger.length - 2, Math.max(0, (from > at ? from - 1 : from) + by))
      ];
      if (next && after) show({ beforeId: next.id, afterId: after.id, screen: 'bench' });
    };
    const action = (
      id: string,
      group: Action['group'],
      title: string,
      keys: string | null,
      isEnabled: boolean,
      run: () => unknown,
    ): Action => ({ id, group, title, keys, isEnabled, run: () => void run() });
    const { undoTitle = null, redoTitle = null } = snapshot ?? {};
    const shell = screens.shell;
    const lastPull =
      (snapshot && after && pullsOf(snapshot, after).findLast(({ pull }) => pull.counts)?.pull) || null;
    const canEdit = isOpen && snapshot.readOnly === null;
    return [
      action(
        'undo',
        'session',
        undoTitle ? shell.undoOf(shell.edits[undoTitle] ?? undoTitle) : shell.undo,
        'Mod+Z',
        undoTitle !== null,
        undo,
      ),
      action(
        'redo',
        'session',
        redoTitle ? shell.redoOf(shell.edits[redoTitle] ?? redoTitle) : shell.redo,
        'Mod+Shift+Z',
        redoTitle !== null,
        redo,
      ),
      action('import', 'session', said.importFiles, 'I', true, () => chooseFiles(takeFiles)),
      action('import-path', 'session', screens.watch.importPath, 'Shift+I', true, () =>
        show({ dialog: { type: 'import-path' } }),
      ),
      action('watch', 'session', screens.watch.open, 'F', isOpen, () => show({ dialog: { type: 'watch' } })),
      action('watch-stop', 'session', screens.watch.stop, null, watch !== null, stop),
      action('history', 'session', screens.history.open, 'H', isOpen, () =>
        show({ dialog: { type: 'history' } }),
      ),
      action('new', 'session', said.newSession, null, true, () =>
        show({ dialog: { type: 'create', files: [] } }),
      ),
      action('open', 'session', said.openFolder, 'O', true, () => show({ dialog: { type: 'open-folder' } })),
      action('unpack', 'session', screens.move.unpack, null, true, () =>
        show({ dialog: { type: 'unpack' } }),
      ),
      action('pack', 'session', screens.move.pack, null, isOpen, () => show({ dialog: { type: 'pack' } })),
      action('merge', 'session', screens.move.merge, null, canEdit, () =>
        show({ dialog: { type: 'merge' } }),
      ),
      action('lean', 'session', screens.leaning.title, 'L', canEdit, () =>
        show({ dialog: { type: 'leaning' } }),
      ),
      action('close', 'session', said.closeSession, null, isOpen, close),
      action('next', 'ledger', said.nextEntry, 'J', isOpen, () => step(1)),
      action('previous', 'ledger', said.previousEntry, 'K', isOpen, () => step(-1)),
      action('from-here', 'ledger', said.compareFrom, 'B', at >= 0, () =>
        show({ beforeId: after?.id ?? null, afterId: ledger[at + 1]?.id ?? null }),
      ),
      action('before-next', 'ledger', said.beforeLater, 'Shift+J', at > 0, () => stepBefore(1)),
      action('before-previous', 'ledger', said.beforeEarlier, 'Shift+K', at > 0, () => stepBefore(-1)),
      action('decide', 'ledger', screens.bench.decide.open, 'W', before !== null && after !== null, () =>
        show({ screen: 'bench', dialog: { type: 'decide' } }),
      ),
      action('add', 'ledger', said.addEntry, 'A', canEdit, () =>
        show({ dialog: { type: 'entry', entryId: null } }),
      ),
      action('edit', 'ledger', said.editEntry, 'E', canEdit && after !== null, () =>
        show({ dialog: { type: 'entry', entryId: after?.id ?? null } }),
      ),
      action(
        'move-logs',
        'ledger',
        screens.importing.move.titleAll,
        'M',
        canEdit && snapshot.runs.length > 0,
        () => show({ dialog: { type: 'move-logs', runId: null } }),
      ),
      action('quick-note', 'ledger', screens.bench.quickNote.title, 'N', canEdit && after !== null, () =>
        show({ dialog: { type: 'quick-note' } }),
      ),
      action('note', 'ledger', said.note, 'Shift+N', canEdit && after !== null, () =>
        show({ screen: 'bench', tab: 'notes' }),
      ),
      action('pin', 'ledger', screens.bench.pinLast, 'P', lastPull !== null, () => {
        if (lastPull) show(({ pinnedPulls }) => ({ pinnedPulls: withToggled(pinnedPulls, lastPull.id) }));
      }),
      action('unpin', 'ledger', screens.bench.unpinAll, 'Shift+P', view.pinnedPulls.length > 0, () =>
        show({ pinnedPulls: [] }),
      ),
      action('drop', 'ledger', said.dropEntry, 'D', canEdit && at > 0, () => {
        const entry = entries.find((e) => e.id === after?.id);
        return entry && setState(entry.id, entry.state === 'kept' ? 'dropped' : 'kept');
      }),
      ...screenNames.map((name) =>
        action(`go-${name}`, 'window', said.goTo(shell.screens[name]), screenKeys[name], isOpen, () =>
          show({ screen: name }),
        ),
      ),
      action('palette', 'window', said.palette, 'Mod+K', true, () => show({ dialog: { type: 'palette' } })),
      action('keys', 'window', said.keys, '?', true, () => show({ dialog: { type: 'keys' } })),
      action('units', 'window', said.units, 'U', true, () => show({ dialog: { type: 'units' } })),
      action('day', 'window', said.day, null, true, () => set({ theme: 'day' })),
      action('night', 'window', said.night, null, true, () => set({ theme: 'night' })),
      action('system', 'window', said.systemTheme, null, true, () => set({ theme: 'system' })),
      action('en', 'window', said.english, null, true, () => set({ language: 'en' })),
      action('de', 'window', said.german, null, true, () => set({ language: 'de' })),
    ];
  }, [
    screens,
    snapshot,
    before,
    after,
    view.screen,
    view.pinnedPulls,
    show,
    entries,
    setState,
    undo,
    redo,
    close,
    set,
    takeFiles,
    watch,
    stop,
  ]);
}
