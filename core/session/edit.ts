import { z } from 'zod';
import { ColumnMappingSchema, DerivedChannelSchema } from '../log/index.ts';
import { CarSchema, ConditionsSchema } from '../power/index.ts';
import { fail, ok, type Result } from '../result/index.ts';
import { type Entry, EntrySchema } from './entry.ts';
import { HandoverChoicesSchema } from './handover-choices.ts';
import { LeaningSchema } from './leaning.ts';
import { LimitsSchema } from './limits.ts';
import { ledgerAfterMove } from './move-run.ts';
import { patchOf } from './patch.ts';
import { IdSchema, PullEditSchema, RunDirectionSchema, type RunRecord } from './run-record.ts';
import type { Session } from './session.ts';
import { checkTable, type SessionTable, SessionTableSchema } from './session-table.ts';
import { SetupSchema } from './setup.ts';

/** A session with its runs' records: what an edit changes and undo restores. Logs themselves never change. */
export type SessionState = {
  readonly session: Session;
  readonly runs: Readonly<Record<string, RunRecord>>;
};

const typedValues = z.record(z.string(), z.strictObject({ value: z.number(), unit: z.string() })).optional();

// A patch takes the fields without their defaults: what it does not name must stay, and zod fills in defaults even there.
const { shape: table } = SessionTableSchema;

/**
 * Every edit that a person can make. Each is undoable; imports are not edits. Made when it is first needed: a
 * screen sends edits and never reads one.
 */
export const SessionEditSchema = z.lazy(() =>
  z.discriminatedUnion('type', [
    z.strictObject({ type: z.literal('session.rename'), name: z.string().min(1).max(200) }),
    z.strictObject({ type: z.literal('session.note'), note: z.string().max(20_000) }),
    z.strictObject({ type: z.literal('car.set'), car: CarSchema, asTyped: typedValues }),
    z.strictObject({ type: z.literal('conditions.set'), conditions: ConditionsSchema, asTyped: typedValues }),
    z.strictObject({
      type: z.literal('derivedChannels.set'),
      derivedChannels: z.array(DerivedChannelSchema).max(100),
    }),
    z.strictObject({ type: z.literal('handover.set'), patch: patchOf(HandoverChoicesSchema.shape) }),
    z.strictObject({ type: z.literal('limits.set'), limits: LimitsSchema }),
    z.strictObject({ type: z.literal('leaning.set'), leansOn: LeaningSchema.nullable() }),
    z.strictObject({ type: z.literal('setup.set'), setup: SetupSchema.nullable(), asTyped: typedValues }),
    z.strictObject({ type: z.literal('entry.add'), entry: EntrySchema, at: z.int().min(1).optional() }),
    z.strictObject({
      type: z.literal('entry.set'),
      entryId: IdSchema,
      patch: patchOf(
        EntrySchema.pick({
          kind: true,
          title: true,
          change: true,
          against: true,
          state: true,
          note: true,
          privateNote: true,
          conditions: true,
        }).shape,
      ),
    }),
    z.strictObject({ type: z.literal('entry.move'), entryId: IdSchema, to: z.int().min(1) }),
    z.strictObject({ type: z.literal('entry.remove'), entryId: IdSchema }),
    z.strictObject({
      type: z.literal('entry.takeRun'),
      entryId: IdSchema,
      runId: IdSchema,
      from_s: z.number().nullable(),
      to_s: z.number().nullable(),
    }),
    z.strictObject({ type: z.literal('entry.leaveRun'), entryId: IdSchema, runId: IdSchema }),
    /** From `entryId` to another entry, with its window. */
    z.strictObject({
      type: z.literal('entry.moveRun'),
      entryId: IdSchema,
      runId: IdSchema,
      to: IdSchema,
    }),
    z.strictObject({
      type: z.literal('run.set'),
      runId: IdSchema,
      patch: z
        .strictObject({
          note: z.string().max(20_000),
          columns: z.array(ColumnMappingSchema),
          conditions: ConditionsSchema.nullable(),
          direction: RunDirectionSchema.nullable(),
        })
        .partial(),
    }),
    z.strictObject({ type: z.literal('table.add'), table: SessionTableSchema }),
    z.strictObject({
      type: z.literal('table.set'),
      tableId: IdSchema,
      patch: z
        .strictObject({
          name: table.name,
          kind: table.kind,
          unit: table.unit,
          isAbsolute: table.isAbsolute.unwrap(),
          axes: table.axes,
          recorded: table.recorded,
          now: table.now,
          limit: table.limit.unwrap(),
        })
        .partial(),
    }),
    z.strictObject({ type: z.literal('table.remove'), tableId: IdSchema }),
    z.strictObject({ type: z.literal('pull.edit'), runId: IdSchema, edit: PullEditSchema }),
  ]),
);
export type SessionEdit = z.infer<typeof SessionEditSchema>;

/** Drops keys whose value is undefined: a partial patch never overwrites with nothing. */
function defined<T extends object>(patch: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(patch).filter(([, v]) => v !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
}

function withEntry(
  state: SessionState,
  entryId: string,
  change: (entry: Entry) => Entry,
): Result<SessionState> {
  if (!state.session.ledger.some((e) => e.id === entryId)) {
    return fail({ code: 'session/no-entry', facts: { entryId } });
  }
  const ledger = state.session.ledger.map((e) => (e.id === entryId ? change(e) : e));
  return ok({ ...state, session: { ...state.session, ledger } });
}

function withRun(
  state: SessionState,
  runId: string,
  change: (run: RunRecord) => RunRecord,
): Result<SessionState> {
  const run = state.runs[runId];
  if (!run) return fail({ code: 'session/no-run', facts: { runId } });
  return ok({ ...state, runs: { ...state.runs, [runId]: change(run) } });
}

function withSession(state: SessionState, patch: Partial<Session>): Result<SessionState> {
  return ok({ ...state, session: { ...state.session, ...patch } });
}

/** The air around, for boost that is written as manifold pressure; standard where nobody has said (ISO 2533). */
export function ambientPressureOf(session: Session): number {
  return (session.setup?.air.barometer_kPa ?? session.conditions.barometer_kPa ?? 101.325) * 1e3;
}

/** A table in its place, or why it can't stand there. */
function withTable(state: SessionState, table: SessionTable): Result<SessionState> {
  const checked = checkTable(table, ambientPressureOf(state.session));
  if (!checked.ok) return checked;
  const { tables } = state.session;
  const isNew = !tables.some((t) => t.id === table.id);
  return withSession(state, {
    tables: isNew ? [...tables, table] : tables.map((t) => (t.id === table.id ? table : t)),
  });
}

function typedAfter(session: Session, asTyped: Record<string, { value: number; unit: string }> | undefined) {
  return asTyped ? { asTyped: { ...session.asTyped, ...asTyped } } : {};
}

/**
 * The state after one edit. Pure; the host applies, saves and remembers the state before for undo.
 *
 * Errors: session/no-entry, session/no-run, session/no-table, session/baseline-stays, session/entry-has-runs,
 *         session/leans-on-itself, session/run-not-in-entry; those of
 *         a table that can't stand as it is.
 */
export function applyEdit(state: SessionState, edit: SessionEdit): Result<SessionState> {
  const { session } = state;
  switch (edit.type) {
    case 'session.rename':
      return withSession(state, { name: edit.name });
    case 'session.note':
      return withSession(state, { note: edit.note });
    case 'car.set':
      return withSession(state, { car: edit.car, ...typedAfter(session, edit.asTyped) });
    case 'conditions.set':
      return withSession(state, { conditions: edit.conditions, ...typedAfter(session, edit.asTyped) });
    case 'derivedChannels.set':
      return withSession(state, { derivedChannels: edit.derivedChannels });
    case 'handover.set':
      return withSession(state, { handover: { ...session.handover, ...defined(edit.patch) } });
    case 'limits.set':
      return withSession(state, { limits: edit.limits });
    case 'leaning.set':
      return edit.leansOn?.sessionId === session.id
        ? fail({ code: 'session/leans-on-itself', facts: {} })
        : withSession(state, { leansOn: edit.leansOn });
    case 'setup.set':
      return withSession(state, { setup: edit.setup, ...typedAfter(session, edit.asTyped) });
    case 'entry.add': {
      const at = Math.min(edit.at ?? session.ledger.length, session.ledger.length);
      return withSession(state, {
        ledger: [...session.ledger.slice(0, at), edit.entry, ...session.ledger.slice(at)],
      });
    }
    case 'entry.set':
      return withEntry(state, edit.entryId, (e) => ({ ...e, ...defined(edit.patch) }));
    case 'entry.move': {
      const from = session.ledger.findIndex((e) => e.id === edit.entryId);
      const moved = session.ledger[from];
      if (!moved) return fail({ code: 'session/no-entry', facts: { entryId: edit.entryId } });
      if (from === 0) return fail({ code: 'session/baseline-stays', facts: {} });
      const rest = session.ledger.filter((e) => e !== moved);
      return withSession(state, { ledger: [...rest.slice(0, edit.to), moved, ...rest.slice(edit.to)] });
    }
    case 'entry.remove': {
      const index = session.ledger.findIndex((e) => e.id === edit.entryId);
      const entry = session.ledger[index];
      if (!entry) return fail({ code: 'session/no-entry', facts: { entryId: edit.entryId } });
      if (index === 0) return fail({ code: 'session/baseline-stays', facts: {} });
      // What was driven stays in the book: an entry with runs is dropped, not removed.
      if (entry.runs.length > 0) {
        return fail({
          code: 'session/entry-has-runs',
          facts: { entryId: edit.entryId, runs: entry.runs.length },
        });
      }
      return withSession(state, {
        ledger: session.ledger
          .filter((e) => e !== entry)
          .map((e) => (e.against === entry.id ? { ...e, against: null } : e)),
      });
    }
    case 'entry.takeRun': {
      if (!state.runs[edit.runId]) return fail({ code: 'session/no-run', facts: { runId: edit.runId } });
      const { runId, from_s, to_s } = edit;
      return withEntry(state, edit.entryId, (e) => ({
        ...e,
        runs: [...e.runs.filter((r) => r.runId !== runId), { runId, from_s, to_s }],
      }));
    }
    case 'entry.leaveRun':
      return withEntry(state, edit.entryId, (e) => ({
        ...e,
        runs: e.runs.filter((r) => r.runId !== edit.runId),
      }));
    case 'entry.moveRun': {
      const ledger = ledgerAfterMove(session.ledger, state.runs, edit);
      return ledger.ok ? withSession(state, { ledger: ledger.value }) : ledger;
    }
    case 'run.set':
      return withRun(state, edit.runId, (r) => ({ ...r, ...defined(edit.patch) }));
    case 'table.add':
      return withTable(state, edit.table);
    case 'table.set': {
      const table = session.tables.find((t) => t.id === edit.tableId);
      if (!table) return fail({ code: 'session/no-table', facts: { tableId: edit.tableId } });
      return withTable(state, { ...table, ...defined(edit.patch) });
    }
    case 'table.remove': {
      if (!session.tables.some((t) => t.id === edit.tableId))
        return fail({ code: 'session/no-table', facts: { tableId: edit.tableId } });
      return withSession(state, { tables: session.tables.filter((t) => t.id !== edit.tableId) });
    }
    case 'pull.edit':
      return withRun(state, edit.runId, (r) => ({ ...r, pullEdits: [...r.pullEdits, edit.edit] }));
  }
}

/** The entry that this one is judged against: as set, else the last kept entry before it; null for the baseline. */
export function entryBefore(session: Session, entryId: string): Entry | null {
  const index = session.ledger.findIndex((e) => e.id === entryId);
  const entry = session.ledger[index];
  if (!entry || index === 0) return null;
  if (entry.against !== null) return session.ledger.find((e) => e.id === entry.against) ?? null;
  return session.ledger.slice(0, index).findLast((e) => e.state === 'kept') ?? null;
}
