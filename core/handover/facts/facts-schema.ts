import { z } from 'zod';
import { changeKinds, verdictKinds } from '../../compare/index.ts';
import { mixBases } from '../../fluids/index.ts';
import { gateQuantities, gateStates } from '../../ladder/index.ts';
import { correctionStandards } from '../../power/index.ts';
import { entryKinds } from '../../session/index.ts';
import { loadKinds } from '../../tables/index.ts';
import { VisitSchema } from './visit-schema.ts';

const n = z.number();
const known = n.nullable();
const pair = z.tuple([n, n]);
const curve = z.array(known);
const text = z.string();
const typed = z.object({ value: n, unit: text }).nullable();
const peak = z
  .object({ value: n, engineSpeed_rpm: n })
  .nullable()
  .describe('highest value of the mean curve and where it stands');

/** What is not proven, as a code; the sheet makes the sentence. */
export const handoverLimits = [
  'band',
  'level',
  'otherwise',
  'uncorrected',
  'not-judged',
  'undecided',
  'single-pull',
  'unwatched',
  'drift',
  'fit',
  'lasting',
] as const;

/**
 * Every number of the customer's summary, for other programs and for the sheet itself. Units stand in the keys:
 * boost is gauge, pressure absolute unless the key says boost. `null` is unknown and is never filled with a
 * plausible value. Effects are after minus before, at the wheels.
 */
export const HandoverFactsSchema = z.object({
  format: z.literal('onechange-handover'),
  version: z.literal(1),
  date: text.describe('the date stated on the summary, ISO 8601'),
  session: z.object({ id: text, name: text, createdAt: text, isInvented: z.boolean() }),
  customer: text,
  shop: text,
  note: text,
  car: z.object({
    name: text,
    mass_kg: n,
    massUncertainty_kg: known,
    gears: z.array(n).describe('gears of the pulls that count'),
    correction: z.enum(correctionStandards),
  }),
  engine: z
    .object({
      displacement_L: known,
      cylinders: known,
      compressionRatio: known,
      compressor: text.nullable(),
      octane_RON: known,
      ethanol_percent: n,
    })
    .nullable()
    .describe('null where the setup sheet is empty'),
  fit: z
    .object({
      passed: n,
      asked: n,
      toFix: z.array(text).describe('ids of rules'),
      unanswered: z.array(text),
    })
    .nullable(),
  asLeft: z.object({
    entry: known.describe('number of the last kept entry that was driven'),
    boost_kPa: known,
    boostMeasured_kPa: known.describe('highest in the last pulls'),
    isSprayOn: z.boolean(),
    sprayStart_kPa: known,
    sprayFull_kPa: known,
    sprayStartInSetup_kPa: known,
    nozzles: z.array(z.object({ name: text, flow_mL_min: n, ratedPressure_kPa: n })),
    nozzlePlace: text.nullable(),
    metering: text.nullable(),
    meteringInput: text.nullable(),
    pumpPressure_kPa: known.describe('gauge, as the regulator or bypass holds it'),
    flowAtPeak_mL_min: known,
    mix: z
      .object({
        by: z.enum(mixBases),
        methanol_percent: n,
        ethanol_percent: n,
      })
      .nullable(),
    spark_deg: known.describe('sum of the kept steps over the first measurement'),
    sparkSteps: z.array(z.object({ entry: n, size_deg: n, where: text })),
    lambda: known,
  }),
  sparkTables: z
    .array(
      z.object({
        name: text,
        readAt: text,
        isInLedger: z.boolean().describe('false: the table holds a change that nobody wrote down'),
        engineSpeed_rpm: z.array(n),
        load: z.object({ kind: z.enum(loadKinds), unit: text, values: z.array(n) }),
        asLeft_deg: z.array(z.array(n)).describe('a line for each load, a column for each engine speed'),
        change_deg: z.array(z.array(n)).describe('as left minus as read; a plus is earlier'),
        cells: n.describe('cells that differ'),
        changesWithout: z
          .array(n)
          .describe(
            'kept spark changes of the ledger that were noted without cells, so not known to be in here',
          ),
      }),
    )
    .describe('spark as left against the tables as they were read'),
  result: z
    .object({
      effect_kW: n,
      interval95_kW: pair,
      band_rpm: pair,
      fromEntry: n,
      toEntry: n,
      parts: z.array(
        z.object({
          kind: z.enum([...changeKinds, 'not-judged']),
          entries: z.array(n),
          effect_kW: n,
          interval95_kW: pair,
        }),
      ),
      peakPower_kW: z.object({ before: peak, after: peak }),
      peakTorque_Nm: z.object({ before: peak, after: peak }),
    })
    .nullable(),
  curves: z
    .object({
      engineSpeed_rpm: z.array(n),
      before_kW: curve,
      after_kW: curve,
      beforeHalf_kW: curve.describe('half of the 95 % band of the mean'),
      afterHalf_kW: curve,
      difference_kW: curve,
      differenceLow_kW: curve.describe('95 % band for the whole curve'),
      differenceHigh_kW: curve,
      proven: z.array(z.object({ from_rpm: n, to_rpm: n, sign: z.union([z.literal(1), z.literal(-1)]) })),
    })
    .nullable(),
  changes: z.array(
    z.object({
      entry: n,
      kind: z.enum(entryKinds),
      title: text.describe('empty where it is made from kind and change'),
      change: z.object({ from: typed, to: typed, where: text }).nullable(),
      state: z.enum(['kept', 'dropped']),
      note: text,
      pulls: n,
      level_kW: known,
      verdict: z.enum(verdictKinds).nullable(),
      effect_kW: known,
      interval95_kW: pair.nullable(),
      effect_percent: known,
      morePulls: known,
      adjustedP: known.describe('after Holm, over all changes of the day'),
      standsAdjusted: z.boolean(),
      reasons: z.array(text).describe('codes'),
    }),
  ),
  hiddenEntries: n,
  gates: z.array(
    z.object({
      quantity: z.enum(gateQuantities),
      unit: text,
      limit: n,
      isLowest: z.boolean(),
      asLeft: known,
      asLeftState: z.enum(gateStates),
      closest: known,
      closestEntry: known,
      closestShare: known.describe('1 is at the limit'),
    }),
  ),
  protection: z.object({
    fallbackBoost_kPa: known,
    actWithin_s: n.nullable(),
    isFallbackWired: z.boolean().nullable(),
    isFallbackProven: z.boolean().nullable(),
    isLowLevelLightFitted: z.boolean().nullable(),
    guardBand: z.array(
      z.object({
        boost_kPa: n,
        lowestFlow_mL_min: n,
        flow_mL_min: n,
        highestFlow_mL_min: n,
        lowestPressure_kPa: n,
        highestPressure_kPa: n,
      }),
    ),
  }),
  fluid: z.object({
    freezing_C: known,
    freezesBelow: z.boolean().describe('true where it freezes somewhere below the value'),
    flash_C: known.describe('cautious estimate; null with `burns` true is unknown'),
    burns: z.boolean().nullable(),
    hasMethanol: z.boolean().nullable(),
    density_kg_m3: known,
    tank_L: known,
    reserve_L: known,
    perPullPlanned_mL: known,
    perPullMeasured_mL: known,
    perPullMeasuredOver: n.describe('pulls'),
    pullsPerTank: known,
    pullsInReserve: known,
    pullsPer100km: known,
    distancePerTank_km: known,
    usedOverPlanned: known,
  }),
  conditions: z.object({
    place: z.enum(['dyno', 'road']).nullable(),
    ambient_C: known,
    barometer_kPa: known,
    relativeHumidity_percent: known,
    grade_percent: known,
  }),
  method: z.object({
    bases: z.array(text).describe('what power was reckoned from'),
    correctionFactors: pair.nullable(),
    pulls: n,
    repeatability_percent: known,
    drift_percent: known.describe('a pull'),
    driftHalf_percent: known,
    margin_percent: n,
    levelHalf_kW: known.describe('half of the 95 % interval of the level, common to all pulls'),
  }),
  limits: z.array(z.object({ code: z.enum(handoverLimits), entry: known })),
  visit: VisitSchema.nullable().describe(
    'against an earlier visit of the same car; null where none was named',
  ),
});
export type HandoverFacts = z.infer<typeof HandoverFactsSchema>;

/** The schema of the JSON form for other programs, JSON Schema draft 2020-12. */
export function handoverJsonSchema(): unknown {
  return { title: 'Onechange handover', ...z.toJSONSchema(HandoverFactsSchema) };
}
