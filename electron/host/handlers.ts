import {
  type CheckedInput,
  type RequestContext,
  type RequestInput,
  type RequestName,
  type RequestOutput,
  type Snapshot,
  toSamples,
  verdictToWire,
} from '../../core/contract/index.ts';
import { correctionsFor, fileColumns } from '../../core/log/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { createSession, entryGates, entryPulls, entryTrace, loggedFluid } from '../../core/session/index.ts';
import { printWithBrowser } from '../print/index.ts';
import { createSessionFolder, type LogSource, listSessions } from '../store/index.ts';
import { compareEntries } from './compare-entries.ts';
import { coastDownOfRuns, type RolledRun, runsWithRolls } from './fit-coast-down.ts';
import { lastVisit } from './last-visit.ts';
import { ledgerOfSession } from './ledger-of-session.ts';
import { handoverBytes, handoverTypes, makeHandover, type PrintPdf } from './make-handover.ts';
import { createMoveHandlers } from './move-handlers.ts';
import { createOpener, type Desk } from './open-desk.ts';
import type { PreferenceKeeper } from './preference-keeper.ts';
import { bandOfCurves, pullCurve, samplesOfCurve } from './pull-curve.ts';
import { repeatabilityOfFolder } from './repeatability-of-folder.ts';
import type { SessionDesk } from './session-desk.ts';
import { listVersions, readVersionOf } from './session-history.ts';
import { thinnedChannel } from './thinned-channel.ts';

/** What a shell gives the host: its place, its clock, its names. */
export type HostSetting = {
  readonly version: string;
  readonly shell: 'desktop' | 'web' | 'terminal';
  /** Folder that new sessions go into. */
  readonly sessionsFolder: string;
  /** Folders whose sessions are listed; without it, those in `sessionsFolder`. */
  readonly listedFolders?: readonly string[];
  /** A working copy of the invented sample, where one was made. */
  readonly sampleFolder: string | null;
  readonly preferences: PreferenceKeeper;
  /** The present moment, ISO 8601 in UTC. */
  readonly now: () => string;
  /** A fresh id in the alphabet of session ids. */
  readonly newId: () => string;
  /** How often a watched folder is listed and how long a log must be quiet; tests hurry. */
  readonly watchTiming?: { readonly interval_ms: number; readonly settle_ms: number };
  /** How this shell makes a PDF; an installed browser where it has no way of its own. */
  readonly printPdf?: PrintPdf;
};

export type Handlers = {
  readonly [N in RequestName]: (
    input: CheckedInput<N>,
    context: RequestContext,
  ) => Promise<Result<RequestOutput<N>>>;
};

/** Runs an action on the open session, or says that none is open. */
export type OnDesk = <T>(action: (desk: SessionDesk) => Promise<Result<T>>) => Promise<Result<T>>;

/** The same where the open session is the one in this folder, as the window has it; without a folder on any. */
export type OnDeskOf = <T>(
  folder: string | undefined,
  action: (desk: SessionDesk) => Promise<Result<T>>,
) => Promise<Result<T>>;

/** Runs an action on the open session where it is the one that the window has on its screen. */
export function onlyOn<T>(
  desk: SessionDesk,
  folder: string | undefined,
  action: (desk: SessionDesk) => Promise<Result<T>>,
): Promise<Result<T>> {
  if (folder === undefined || folder === desk.folder) return action(desk);
  return Promise.resolve(
    fail({ code: 'contract/other-session', facts: { asked: folder, open: desk.folder } }),
  );
}

export function createHandlers(
  setting: HostSetting,
  desk: Desk,
  onChange: (revision: number) => void,
): Handlers {
  const { preferences, now } = setting;

  const opener = createOpener(setting, desk, onChange);

  const onDesk: OnDesk = (action) => {
    const { current } = desk;
    return current ? action(current) : Promise.resolve(fail({ code: 'contract/no-session', facts: {} }));
  };

  const onDeskOf: OnDeskOf = (folder, action) => onDesk((d) => onlyOn(d, folder, action));

  async function afterEdit(
    done: Result<void>,
    current: SessionDesk,
    context: RequestContext,
  ): Promise<Result<Snapshot>> {
    return done.ok ? ok(await current.snapshot(context)) : done;
  }

  async function summaryOf(
    d: SessionDesk,
    { against, ...wish }: RequestInput<'handover.make'>,
    context: RequestContext,
  ) {
    const date = wish.date ?? now().slice(0, 10);
    const last = await lastVisit(d, against, { now: now(), version: setting.version }, context);
    if (!last.ok) return last;
    const usual = await preferences.get();
    return ok(await makeHandover(d.state(), await d.analyses(context), usual, { ...wish, date }, last.value));
  }

  return {
    'app.info': async () =>
      ok({
        version: setting.version,
        shell: setting.shell,
        sessionsFolder: setting.sessionsFolder,
        sampleFolder: setting.sampleFolder,
        openFolder: desk.current?.folder ?? null,
      }),
    'preferences.get': async () => ok(await preferences.get()),
    'preferences.set': async (input) => ok(await preferences.set(input)),
    'sessions.list': async () => {
      const listed = await listSessions(setting.listedFolders ?? [setting.sessionsFolder]);
      if (!listed.ok) return listed;
      return ok({
        sessions: listed.value.map(({ folder, name, carName, createdAt, isInvented }) => ({
          folder,
          name,
          carName,
          createdAt,
          isInvented,
        })),
      });
    },
    'sessions.create': async (input, context) => {
      const session = createSession({
        id: setting.newId(),
        baselineId: setting.newId(),
        name: input.name,
        now: now(),
        car: input.car,
      });
      const folder = await createSessionFolder(input.folder ?? setting.sessionsFolder, session, now());
      return folder.ok ? opener.open(folder.value, context) : folder;
    },
    'sessions.open': (input, context) => opener.open(input.folder, context),
    'sessions.repeatability': ({ folder }, context) =>
      repeatabilityOfFolder(folder, { now: now(), version: setting.version }, context),
    'sessions.close': () => opener.close(),
    'session.get': async (_input, context) => ok(desk.current ? await desk.current.snapshot(context) : null),
    'session.edit': (input, context) =>
      onDeskOf(input.folder, async (d) =>
        afterEdit(await d.edit(input.edits, input.joinKey ?? null), d, context),
      ),
    'session.undo': (input, context) =>
      onDeskOf(input.folder, async (d) => afterEdit(await d.undo(), d, context)),
    'session.redo': (input, context) =>
      onDeskOf(input.folder, async (d) => afterEdit(await d.redo(), d, context)),
    ...createMoveHandlers(setting, onDesk, onDeskOf),
    'history.list': () => onDesk((d) => listVersions(d.folder, d.state().session)),
    'history.read': (input) => onDesk((d) => readVersionOf(d.folder, d.state(), input.file)),
    'history.restore': (input, context) =>
      onDeskOf(input.folder, async (d) => {
        const version = await readVersionOf(d.folder, d.state(), input.file);
        return version.ok ? afterEdit(await d.restore(version.value.session), d, context) : version;
      }),
    'watch.get': async () => ok(desk.watch.state()),
    'watch.start': ({ folder, session, ...target }) =>
      onDeskOf(session, async (d) => {
        const { entryId } = target;
        const isThere = entryId === null || d.state().session.ledger.some((e) => e.id === entryId);
        if (!isThere) return fail({ code: 'session/no-entry', facts: { entryId } });
        return desk.watch.start(folder, target);
      }),
    'watch.stop': async ({ session }) => {
      const stop = () => {
        desk.watch.stop();
        return Promise.resolve(ok({}));
      };
      // Where no session is open no watch runs either, and there is nothing to refuse.
      return desk.current ? onlyOn(desk.current, session, stop) : stop();
    },
    'runs.expect': ({ size_bytes }) =>
      onDesk((d) => {
        d.expect(size_bytes);
        return Promise.resolve(ok({}));
      }),
    'runs.import': (input, context) =>
      onDeskOf(input.folder, (d) => importInto(d, preferences, { path: input.path }, input.entryId, context)),
    'runs.channels': (input, context) =>
      onDesk(async (d) => {
        const analysis = (await d.analyses(context)).get(input.runId);
        if (!analysis) return fail({ code: 'session/no-run', facts: { runId: input.runId } });
        const { log } = analysis;
        const wanted = new Set(input.columns);
        return ok({
          channels: log.channels
            .filter((channel) => wanted.has(channel.column))
            .map((channel) => ({
              column: channel.column,
              ...thinnedChannel(log.time, channel.values, input),
            })),
        });
      }),
    'ledger.get': (input, context) =>
      onDesk(async (d) => ok(ledgerOfSession(d.state(), await d.analyses(context), input.band))),
    'entries.compare': (input, context) =>
      onDesk(async (d) => {
        const verdict = compareEntries(d.state(), await d.analyses(context), input);
        return verdict.ok ? ok(verdictToWire(verdict.value)) : verdict;
      }),
    'entries.curves': (input, context) =>
      onDesk(async (d) => {
        const { session, runs } = d.state();
        const analyses = await d.analyses(context);
        const counted = new Map(entryPulls(session, runs, analyses).map((e) => [e.id, e.pulls]));
        const byId = new Map([...analyses.values()].flatMap((a) => a.pulls.map((p) => [p.id, p] as const)));
        const asked = input.entryIds.map((entryId) => ({
          entryId,
          pulls: (counted.get(entryId) ?? []).flatMap(({ id }) => byId.get(id) ?? []),
        }));
        const most = samplesOfCurve(asked.reduce((n, { pulls }) => n + pulls.length, 0));
        return ok({
          entries: asked.map(({ entryId, pulls }) => ({
            entryId,
            pulls: pulls.flatMap((pull) => pullCurve(pull, most) ?? []),
            band: bandOfCurves(pulls),
          })),
        });
      }),
    'entries.trace': (input, context) =>
      onDesk(async (d) => {
        const { session, runs } = d.state();
        const analyses = await d.analyses(context);
        return ok({
          pulls: input.entryIds.flatMap((id) =>
            entryTrace(session, runs, analyses, id).map(({ pullId, entryId, states }) => ({
              pullId,
              entryId,
              engineSpeed_rad_s: toSamples(states.map((s) => s.engineSpeed_rad_s)),
              boost: toSamples(states.map((s) => s.boost)),
              throttle: toSamples(states.map((s) => s.throttle ?? Number.NaN)),
              fluidFlow: toSamples(states.map((s) => s.fluidFlow ?? Number.NaN)),
            })),
          ),
        });
      }),
    'entries.gates': (input, context) =>
      onDesk(async (d) => {
        const { session, runs } = d.state();
        const entry = entryPulls(session, runs, await d.analyses(context)).find(
          (e) => e.id === input.entryId,
        );
        if (!entry) return fail({ code: 'session/no-entry', facts: { entryId: input.entryId } });
        return ok({
          gates: entryGates(session, entry.pulls).map(({ predicted: _, closeness: __, ...gate }) => gate),
        });
      }),
    'fluid.logged': (_input, context) =>
      onDesk(async (d) => ok(loggedFluid(d.state().session, await d.analyses(context)))),
    'coastDown.runs': (_input, context) =>
      onDesk(async (d) => ok({ runs: runsWithRolls(await d.analyses(context)) })),
    'coastDown.fit': (input, context) =>
      onDesk(async (d) => {
        const analyses = await d.analyses(context);
        const { session, runs } = d.state();
        const rolled: RolledRun[] = [];
        for (const { runId, ways } of input.runs) {
          const analysis = analyses.get(runId);
          const record = runs[runId];
          if (!analysis || !record) return fail({ code: 'session/no-run', facts: { runId } });
          rolled.push({ analysis, record, ways });
        }
        return ok(coastDownOfRuns(rolled, session.car));
      }),
    'handover.make': (input, context) =>
      onDesk(async (d) => {
        const made = await summaryOf(d, input, context);
        if (!made.ok) return made;
        const { stem, html } = made.value;
        return ok({ fileName: `${stem}.html`, html });
      }),
    'handover.export': (input, context) =>
      onDesk(async (d) => {
        const { format, ...wish } = input;
        const made = await summaryOf(d, wish, context);
        if (!made.ok) return made;
        const bytes = await handoverBytes(made.value, format, setting.printPdf ?? printWithBrowser);
        if (!bytes.ok) return bytes;
        const fileName = `${made.value.stem}.${format}`;
        const kept = await d.keepHandover(fileName, bytes.value);
        if (!kept.ok) return kept;
        const content = Buffer.from(bytes.value).toString('base64');
        return ok({ fileName, type: handoverTypes[format], content, savedAs: kept.value });
      }),
  };
}

/** Nobody waits for what the watch does, and nobody cancels it. */
const unasked: RequestContext = { requestId: 'watch', signal: { aborted: false }, progress: () => undefined };

/** Takes a log that the watch found whole; one that grew since stands in for its shorter copy. */
export async function takeWatched(
  desk: SessionDesk | null,
  preferences: PreferenceKeeper,
  path: string,
  entryId: string | null,
  earlierRunId: string | null,
): Promise<Result<{ runId: string; replaces: string | null }>> {
  if (!desk) return fail({ code: 'contract/no-session', facts: {} });
  const taken = await desk.take({ path }, null, unasked);
  if (!taken.ok) return taken;
  const { record, duplicateOf } = taken.value;
  const runId = record.id;
  if (earlierRunId !== null && duplicateOf === null) {
    const stands = await desk.standInFor(runId, earlierRunId);
    if (!stands.ok) return stands;
    if (stands.value) return ok({ runId, replaces: earlierRunId });
    const isPart = await desk.isPartOf(runId, earlierRunId);
    if (!isPart.ok) return isPart;
    // A file that was cut short, or is being copied anew: the run that holds more stays in the ledger.
    if (isPart.value) return ok({ runId: earlierRunId, replaces: null });
  }
  const joined = await desk.join(record, entryId);
  if (!joined.ok) return joined;
  if (duplicateOf === null) {
    const corrected = await readAsCorrectedBefore(desk, preferences, runId, unasked);
    if (!corrected.ok) return corrected;
  }
  return ok({ runId, replaces: null });
}

/** Imports and answers with what was found, for a path and for an upload alike. */
export async function importInto(
  desk: SessionDesk,
  preferences: PreferenceKeeper,
  source: LogSource,
  entryId: string | null,
  context: RequestContext,
): Promise<Result<RequestOutput<'runs.import'>>> {
  const imported = await desk.take(source, entryId, context);
  if (!imported.ok) return imported;
  const { record, duplicateOf } = imported.value;
  const runId = duplicateOf ?? record.id;
  if (duplicateOf === null) {
    const corrected = await readAsCorrectedBefore(desk, preferences, runId, context);
    if (!corrected.ok) return corrected;
  }
  const run = await desk.summaryOf(runId, context);
  if (!run) return fail({ code: 'session/no-run', facts: { runId } });
  return ok({ run, duplicateOf, snapshot: await desk.snapshot(context) });
}

/**
 * Gives a fresh log the corrections that were kept for logs with the same columns. A step of its own: undo reads the
 * log as it was found.
 */
async function readAsCorrectedBefore(
  desk: SessionDesk,
  preferences: PreferenceKeeper,
  runId: string,
  context: RequestContext,
): Promise<Result<void>> {
  const { columnProfiles } = await preferences.get();
  if (columnProfiles.length === 0) return ok(undefined);
  const run = await desk.summaryOf(runId, context);
  const columns = run ? correctionsFor(columnProfiles, fileColumns(run.columns)) : [];
  if (columns.length === 0) return ok(undefined);
  return desk.edit([{ type: 'run.set', runId, patch: { columns: [...columns] } }], null);
}
