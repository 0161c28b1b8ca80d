import { ok } from '../../core/result/index.ts';
import type { Handlers, HostSetting, OnDesk, OnDeskOf } from './handlers.ts';
import { shownConflicts, shownMerge } from './merge-copies.ts';
import { packSession, unpackSession, withCopy } from './move-session.ts';

type MoveHandlers = Pick<
  Handlers,
  'session.pack' | 'sessions.unpack' | 'session.merge' | 'merge.list' | 'merge.settle'
>;

/** Answers the requests that take a session from one machine to another and bring two copies together. */
export function createMoveHandlers(setting: HostSetting, onDesk: OnDesk, onDeskOf: OnDeskOf): MoveHandlers {
  return {
    'session.pack': ({ path, folder }, context) =>
      onDeskOf(folder, async (d) => {
        // Who takes a session along would find out elsewhere, where the log is not at hand.
        const [first, ...others] = await d.lostSources();
        if (first) return { ok: false, problems: [first, ...others] };
        return packSession(d.folder, d.state().session.name, path, setting.now(), context);
      }),
    'sessions.unpack': ({ path, into }, context) =>
      unpackSession(path, into ?? setting.sessionsFolder, context),
    'session.merge': ({ path, folder }, context) =>
      onDeskOf(folder, async (d) => {
        const merged = await withCopy(path, context, (copy) => d.merge(copy));
        if (!merged.ok) return merged;
        const report = await shownMerge(d.folder, d.state(), merged.value);
        return report.ok ? ok({ report: report.value, snapshot: await d.snapshot(context) }) : report;
      }),
    'merge.list': () =>
      onDesk(async (d) => {
        const conflicts = await shownConflicts(d.folder, d.state());
        return conflicts.ok ? ok({ conflicts: conflicts.value }) : conflicts;
      }),
    'merge.settle': (input, context) =>
      onDeskOf(input.folder, async (d) => {
        const settled = await d.settle(input);
        return settled.ok ? ok(await d.snapshot(context)) : settled;
      }),
  };
}
