import { z } from 'zod';
import { changeKinds } from '../compare/index.ts';
import { gateActions, gateQuantities, gateStates } from '../ladder/index.ts';

import {
  CarSchema,
  handoverForms,
  handoverUnits,
  IdSchema,
  papers,
  SessionEditSchema,
  SessionSchema,
} from '../session/index.ts';

import { shownKinds } from '../units/index.ts';
import { CoastDownRunsSchema, CoastDownSchema, rollWays } from './coast-down.ts';
import { MergeConflictSchema, MergeReportSchema, mergeSides, PackedSchema, UnpackedSchema } from './move.ts';
import { PreferencesSchema } from './preferences.ts';
import { RunSummarySchema, SnapshotSchema } from './snapshot.ts';
import { VerdictSchema } from './verdict-wire.ts';
import { SessionVersionSchema } from './versions.ts';
import { FolderWatchSchema } from './watch.ts';
import { NoteSchema, SamplesSchema } from './wire.ts';

type RequestShape = { readonly input: z.ZodType; readonly output: z.ZodType };

/** One request; its schemas are made when they are first needed, as a screen needs few of them to start. */
function request<I extends z.ZodType, O extends z.ZodType>(
  make: () => { input: I; output: O },
): { readonly input: I; readonly output: O } {
  let made: { input: I; output: O } | null = null;
  const shape = () => {
    made ??= make();
    return made;
  };
  return {
    get input() {
      return shape().input;
    },
    get output() {
      return shape().output;
    },
  };
}

const nothing = z.strictObject({});
/** Folder of the session that the window shows: another window may have opened another. */
const ofFolder = z.string().optional();
/** Range of the common band, as the user set it; null is the default band. */
const band = z.tuple([z.number(), z.number()]).nullable().default(null);

const level = z.number().nullable();
/** What the counted pulls of an entry measured of the stop rules, SI; null where no channel tells. */
export const MeasuredSchema = z.object({
  pulls: z.int(),
  knockEvents: level,
  knockRetard_rad: level,
  leanestLambda: level,
  hottestIntake: level,
  hottestExhaust: level,
  lowestFluidPressure: level,
  fluidFlow: level,
  injectorDuty: level,
  fuelFlow: level,
  manifoldPressure: level,
  boost: level,
  fuelPressureHeld: level,
  fluidLevel: level,
});

/** One line of the ledger as computed: the entry against the one it is judged by. */
export const LedgerLineSchema = z.object({
  entryId: z.string(),
  againstId: z.string().nullable(),
  pulls: z.int(),
  pullsLeftOut: z.int(),
  /** Mean wheel power over the band with half its 95 % interval [W]. */
  level: z.object({ mean: z.number(), half: z.number().nullable() }).nullable(),
  peak: z.object({ wheelPower: z.number(), engineSpeed_rad_s: z.number() }).nullable(),
  /** Null for the baseline and for entries without pulls. */
  verdict: VerdictSchema.omit({ curve: true, witnesses: true }).nullable(),
  measured: MeasuredSchema,
  /** Whether the statement stands at 5 % for all lines of the session together (Holm). */
  standsAdjusted: z.boolean(),
});
export type LedgerLine = z.infer<typeof LedgerLineSchema>;

export const LedgerSchema = z.object({
  lines: z.array(LedgerLineSchema),
  /** Baseline to the last kept entry [W at the wheel]; the parts by kind of change add up to it. */
  total: z
    .object({
      effect: z.number(),
      interval95: z.tuple([z.number(), z.number()]),
      fromId: z.string(),
      toId: z.string(),
      parts: z.array(
        z.object({
          kind: z.enum([...changeKinds, 'not-judged']),
          entryIds: z.array(z.string()),
          effect: z.number(),
          interval95: z.tuple([z.number(), z.number()]),
        }),
      ),
    })
    .nullable(),
  /** Share of power a pull, where an earlier entry was driven again. */
  drift: z.object({ perPull: z.number(), interval95: z.tuple([z.number(), z.number()]) }).nullable(),
  /** Of one pull, as a share of power: what a later session of the same car may lean on. */
  repeatability: z.object({ deviationShare: z.number(), degrees: z.number() }).nullable(),
  notes: z.array(NoteSchema),
});
export type Ledger = z.infer<typeof LedgerSchema>;

export const handoverFormats = ['html', 'pdf', 'csv', 'json'] as const;
export type HandoverFormat = (typeof handoverFormats)[number];

/** What a caller may ask of a summary; the rest follows the session's own choices. */
const handoverWish = {
  language: z.enum(['en', 'de']).optional(),
  units: z.enum(handoverUnits).optional(),
  form: z.enum(handoverForms).optional(),
  paper: z.enum(papers).optional(),
  /** Date printed on it, `2027-03-14`. */
  date: z.iso.date().optional(),
  /** Folder of an earlier visit of the same car, which is only looked at. */
  against: z.string().min(1).optional(),
};

/** Power of one pull, SI. */
export const PullCurveSchema = z.object({
  pullId: z.string(),
  runId: z.string(),
  engineSpeed_rad_s: SamplesSchema,
  wheelPower: SamplesSchema,
});
export type PullCurve = z.infer<typeof PullCurveSchema>;

/** How far off the power of one pull may be (95 %), about the mean of an entry's pulls, SI. */
export const OnePullBandSchema = z.object({
  engineSpeed_rad_s: SamplesSchema,
  low: SamplesSchema,
  high: SamplesSchema,
});
export type OnePullBandWire = z.infer<typeof OnePullBandSchema>;

/**
 * Everything that a screen may ask of the host. One entry and one handler make a new request; types on both
 * sides follow from it.
 */
export const requests = {
  'app.info': request(() => ({
    input: nothing,
    output: z.object({
      version: z.string(),
      shell: z.enum(['desktop', 'web', 'terminal']),
      /** Folder that new sessions go into, and a ready copy of the invented sample. */
      sessionsFolder: z.string(),
      sampleFolder: z.string().nullable(),
      openFolder: z.string().nullable(),
    }),
  })),
  'preferences.get': request(() => ({ input: nothing, output: PreferencesSchema })),
  'preferences.set': request(() => ({ input: PreferencesSchema.partial(), output: PreferencesSchema })),
  'sessions.list': request(() => ({
    input: nothing,
    output: z.object({
      sessions: z.array(
        z.object({
          folder: z.string(),
          name: z.string(),
          carName: z.string().nullable(),
          createdAt: z.string().nullable(),
          isInvented: z.boolean(),
        }),
      ),
    }),
  })),
  'sessions.create': request(() => ({
    input: z.strictObject({
      name: z.string().min(1).max(200),
      car: CarSchema,
      folder: z.string().optional(),
    }),
    output: SnapshotSchema,
  })),
  'sessions.open': request(() => ({ input: z.strictObject({ folder: z.string() }), output: SnapshotSchema })),
  /** How well pulls repeated in the session of another folder, which is only looked at. Null where it can't tell. */
  'sessions.repeatability': request(() => ({
    input: z.strictObject({ folder: z.string().min(1) }),
    output: z.object({
      sessionId: z.string(),
      name: z.string(),
      carName: z.string(),
      createdAt: z.string(),
      repeatability: z.object({ deviationShare: z.number(), degrees: z.number() }).nullable(),
    }),
  })),
  'sessions.close': request(() => ({ input: nothing, output: z.object({}) })),
  'session.get': request(() => ({ input: nothing, output: SnapshotSchema.nullable() })),
  'session.edit': request(() => ({
    input: z.strictObject({
      edits: z.array(SessionEditSchema).min(1),
      /** Edits with the same join key in a row are one step of undo: a slider, a typed field. */
      joinKey: z.string().max(200).optional(),
      folder: ofFolder,
    }),
    output: SnapshotSchema,
  })),
  'session.undo': request(() => ({ input: z.strictObject({ folder: ofFolder }), output: SnapshotSchema })),
  'session.redo': request(() => ({ input: z.strictObject({ folder: ofFolder }), output: SnapshotSchema })),
  /** Packs the open session into one zip; null puts it beside the session folder, under its name. */
  'session.pack': request(() => ({
    input: z.strictObject({ path: z.string().min(1).nullable().default(null), folder: ofFolder }),
    output: PackedSchema,
  })),
  /** Unpacks a zip into a new folder in `into`, null for where new sessions go. It is not opened by this. */
  'sessions.unpack': request(() => ({
    input: z.strictObject({ path: z.string().min(1), into: z.string().min(1).nullable().default(null) }),
    output: UnpackedSchema,
  })),
  /** Brings another copy of the open session into it: a session folder, or a zip of one. */
  'session.merge': request(() => ({
    input: z.strictObject({ path: z.string().min(1), folder: ofFolder }),
    output: z.object({ report: MergeReportSchema, snapshot: SnapshotSchema }),
  })),
  /** What merges left to decide, with what stands now. */
  'merge.list': request(() => ({
    input: nothing,
    output: z.object({ conflicts: z.array(MergeConflictSchema) }),
  })),
  /** Takes the value of one side, as an edit that undo takes back. */
  'merge.settle': request(() => ({
    input: z.strictObject({
      record: z.string().max(300),
      index: z.int().min(0),
      take: z.enum(mergeSides),
      folder: ofFolder,
    }),
    output: SnapshotSchema,
  })),
  /** Earlier versions of the open session's session.json, the newest first, and what was set aside of it. */
  'history.list': request(() => ({
    input: nothing,
    output: z.object({ versions: z.array(SessionVersionSchema) }),
  })),
  /** One of them, to look at: `differs` are the fields in which the session is another now, at most 50. */
  'history.read': request(() => ({
    input: z.strictObject({ file: z.string().max(300) }),
    output: z.object({
      version: SessionVersionSchema,
      session: SessionSchema,
      differs: z.array(z.string()),
      /** Runs that it knows and the folder has no more. */
      missingRuns: z.array(z.string()),
    }),
  })),
  /** Makes one of them the present state, as an edit that undo takes back. Runs and their records stay. */
  'history.restore': request(() => ({
    input: z.strictObject({ file: z.string().max(300), folder: ofFolder }),
    output: SnapshotSchema,
  })),
  /** The watch of the open session, null where none runs. It ends with the session. */
  'watch.get': request(() => ({ input: nothing, output: FolderWatchSchema.nullable() })),
  /**
   * Watches a folder that a logger writes into. Each log is taken into `entryId` once it is whole; every step is
   * told as `watch-changed`. Started again on the same folder it only takes the new entry over.
   */
  'watch.start': request(() => ({
    input: z.strictObject({
      folder: z.string().min(1),
      entryId: IdSchema.nullable().default(null),
      /** True: the newest kept entry of the ledger at the moment a log is whole, in place of `entryId`. */
      follows: z.boolean().default(false),
      /** False: logs are told and left where they are. */
      takes: z.boolean().default(true),
      session: ofFolder,
    }),
    output: FolderWatchSchema,
  })),
  'watch.stop': request(() => ({ input: z.strictObject({ session: ofFolder }), output: z.object({}) })),
  /** Logs are about to come, the largest of so many bytes: what a big one needs is got ready. */
  'runs.expect': request(() => ({
    input: z.strictObject({ size_bytes: z.number().min(0) }),
    output: z.object({}),
  })),
  /** From a path on this machine. Files from a browser come through the shell's upload, with the same answer. */
  'runs.import': request(() => ({
    input: z.strictObject({
      path: z.string(),
      entryId: IdSchema.nullable().default(null),
      folder: ofFolder,
    }),
    output: z.object({ run: RunSummarySchema, duplicateOf: z.string().nullable(), snapshot: SnapshotSchema }),
  })),
  'runs.channels': request(() => ({
    input: z.strictObject({
      runId: IdSchema,
      columns: z.array(z.string()).max(200),
      from_s: z.number().nullable().default(null),
      to_s: z.number().nullable().default(null),
      /** At most this many points a channel; minima and maxima are kept. */
      most: z.int().min(2).max(200_000).default(4000),
    }),
    output: z.object({
      channels: z.array(z.object({ column: z.string(), time: SamplesSchema, values: SamplesSchema })),
    }),
  })),
  'ledger.get': request(() => ({ input: z.strictObject({ band }), output: LedgerSchema })),
  'entries.compare': request(() => ({
    input: z.strictObject({ before: IdSchema, after: IdSchema, band }),
    output: VerdictSchema,
  })),
  'entries.curves': request(() => ({
    input: z.strictObject({ entryIds: z.array(IdSchema).max(50) }),
    output: z.object({
      entries: z.array(
        z.object({
          entryId: z.string(),
          pulls: z.array(PullCurveSchema),
          band: OnePullBandSchema.nullable(),
        }),
      ),
    }),
  })),
  /** Where in a table of the engine control the counted pulls of entries went. SI. */
  'entries.trace': request(() => ({
    input: z.strictObject({ entryIds: z.array(IdSchema).max(50) }),
    output: z.object({
      pulls: z.array(
        z.object({
          pullId: z.string(),
          entryId: z.string(),
          engineSpeed_rad_s: SamplesSchema,
          boost: SamplesSchema,
          throttle: SamplesSchema,
          fluidFlow: SamplesSchema,
        }),
      ),
    }),
  })),
  /** How close the pulls of an entry came to the session's limits. */
  'entries.gates': request(() => ({
    input: z.strictObject({ entryId: IdSchema }),
    output: z.object({
      gates: z.array(
        z.object({
          quantity: z.enum(gateQuantities),
          kind: z.enum(shownKinds),
          limit: z.number(),
          isLowest: z.boolean(),
          measured: z.number().nullable(),
          state: z.enum(gateStates),
          ifClosed: z.enum(gateActions),
        }),
      ),
    }),
  })),
  /** Fluid of the pulls of the newest entry that sprayed [m^3], where its logs have a flow channel. */
  'fluid.logged': request(() => ({
    input: nothing,
    output: z.object({ fluid: z.number(), pulls: z.int(), entryId: z.string() }).nullable(),
  })),
  /** Runs of the session that hold rolls in neutral. */
  'coastDown.runs': request(() => ({ input: nothing, output: CoastDownRunsSchema })),
  /**
   * The rolls found in some runs and the road load that they give together. `ways` goes along the rolls of its run; one
   * that is not named goes the way that the run says, else the one that its positions tell, else out.
   */
  'coastDown.fit': request(() => ({
    input: z.strictObject({
      runs: z
        .array(
          z.strictObject({
            runId: IdSchema,
            ways: z.array(z.enum(rollWays).nullable()).max(100_000).default([]),
          }),
        )
        .max(1000),
    }),
    output: CoastDownSchema,
  })),
  /** The summary as a page to look at; nothing is kept. */
  'handover.make': request(() => ({
    input: z.strictObject(handoverWish),
    output: z.object({ fileName: z.string(), html: z.string() }),
  })),
  /** The summary as a file; a dated copy stays in the session's folder where that may be written. */
  'handover.export': request(() => ({
    input: z.strictObject({ ...handoverWish, format: z.enum(handoverFormats) }),
    output: z.object({
      fileName: z.string(),
      type: z.string(),
      /** Base64. */
      content: z.string(),
      /** Path of the copy inside the session; null where the session is only read. */
      savedAs: z.string().nullable(),
    }),
  })),
} satisfies Record<string, RequestShape>;

export type Requests = typeof requests;
export type RequestName = keyof Requests;
/** What a caller writes. */
export type RequestInput<N extends RequestName> = z.input<Requests[N]['input']>;
/** What a handler gets, after validation. */
export type CheckedInput<N extends RequestName> = z.output<Requests[N]['input']>;
export type RequestOutput<N extends RequestName> = z.output<Requests[N]['output']>;
