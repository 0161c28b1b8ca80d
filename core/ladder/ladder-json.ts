import { z } from 'zod';
import { NoteJsonSchema, notesJson } from '../result/index.ts';
import { fileUnit, fromSi, type ShownKind, tidy } from '../units/index.ts';
import type { CoveredCells } from './covered-cells.ts';
import { type Gate, gateActions, gateQuantities, gateStates } from './gate.ts';
import type { Ladder } from './plan-ladder.ts';
import { ladderPlaces } from './routine.ts';
import { type LadderStep, stepKinds, stepQuantity } from './step.ts';

const number = z.number();
const range = z.tuple([number, number]);

/** What `ladder` answers outside the program: units in the keys or beside the number, boost gauge. */
export const LadderJsonSchema = z.object({
  steps: z.array(
    z.object({
      n: number,
      kind: z.enum(stepKinds),
      from: number.nullable(),
      to: number.nullable(),
      /** Of `from` and `to`; empty where there are none. */
      unit: z.string(),
      isHalf: z.boolean(),
      cells: z
        .object({
          boost_kPa: range,
          engineSpeed_rpm: range,
          /** Name of the spark table, and its covered cells with the axes as written in it. */
          table: z.string().optional(),
          loadUnit: z.string().optional(),
          covered: z.array(z.object({ engineSpeed_rpm: number, load: number, value: number })).optional(),
        })
        .optional(),
      predicted: z.object({
        power_kW: range.nullable(),
        knockHeadroom_deg: range.nullable(),
        fluid_mL_min: number,
        injectorDuty_percent: number.nullable(),
        intakeTemp_C: number.nullable(),
        manifold_kPa: number,
      }),
      gates: z.array(
        z.object({
          quantity: z.enum(gateQuantities),
          limit: number,
          unit: z.string(),
          isLowest: z.boolean(),
          predicted: range.nullable(),
          closeness: number.nullable(),
          state: z.enum(gateStates),
          ifClosed: z.enum(gateActions),
        }),
      ),
      ifClosed: z.enum(gateActions),
      reasons: z.array(NoteJsonSchema),
      cautions: z.array(NoteJsonSchema),
    }),
  ),
  boostEnds: z.array(z.object({ end: z.string(), boost_kPa: number })),
  headroom: z
    .object({
      shownBoost_kPa: number,
      isKnockLimited: z.boolean(),
      boost_kPa: range,
      spark_deg: range,
    })
    .nullable(),
  routine: z.object({
    place: z.enum(ladderPlaces),
    pulls: number,
    bothWays: z.boolean(),
    coolDown_s: number,
    returnAfter: number,
  }),
  notes: z.array(NoteJsonSchema),
});
export type LadderJson = z.infer<typeof LadderJsonSchema>;

function inUnit(value: number, kind: ShownKind): number {
  return tidy(fromSi(value, fileUnit(kind)));
}
function rangeIn(value: readonly [number, number] | null, kind: ShownKind): [number, number] | null {
  return value && [inUnit(value[0], kind), inUnit(value[1], kind)];
}

function gateJson(gate: Gate): LadderJson['steps'][number]['gates'][number] {
  return {
    quantity: gate.quantity,
    limit: inUnit(gate.limit, gate.kind),
    unit: fileUnit(gate.kind),
    isLowest: gate.isLowest,
    predicted: rangeIn(gate.predicted, gate.kind),
    closeness: gate.closeness === null || !Number.isFinite(gate.closeness) ? null : tidy(gate.closeness),
    state: gate.state,
    ifClosed: gate.ifClosed,
  };
}

function coveredJson({ table, axes, cells }: CoveredCells) {
  const isAcross = axes.engineSpeed === 'across';
  return {
    table,
    loadUnit: axes.load.unit,
    covered: cells.map(({ across, down, value }) => ({
      engineSpeed_rpm: isAcross ? across : down,
      load: isAcross ? down : across,
      value,
    })),
  };
}

function stepJson(step: LadderStep): LadderJson['steps'][number] {
  const { predicted, cells } = step;
  const kind = stepQuantity[step.kind];
  const end = (value: number | null) => (value === null || kind === null ? null : inUnit(value, kind));
  const power = predicted.power;
  return {
    n: step.n,
    kind: step.kind,
    from: end(step.from),
    to: end(step.to),
    unit: kind === null ? '' : fileUnit(kind),
    isHalf: step.isHalf,
    ...(cells
      ? {
          cells: {
            boost_kPa: [inUnit(cells.boost[0], 'boost'), inUnit(cells.boost[1], 'boost')],
            engineSpeed_rpm: [
              tidy(fromSi(cells.engineSpeed_rad_s[0], 'rpm')),
              tidy(fromSi(cells.engineSpeed_rad_s[1], 'rpm')),
            ],
            ...(cells.inTable ? coveredJson(cells.inTable) : {}),
          },
        }
      : {}),
    predicted: {
      power_kW: power && [tidy(power[0] / 1e3), tidy(power[1] / 1e3)],
      knockHeadroom_deg: rangeIn(predicted.knockHeadroom_rad, 'angle'),
      fluid_mL_min: inUnit(predicted.fluidFlow, 'volumeFlow'),
      injectorDuty_percent: predicted.injectorDuty === null ? null : inUnit(predicted.injectorDuty, 'share'),
      intakeTemp_C: Number.isFinite(predicted.intake) ? inUnit(predicted.intake, 'temperature') : null,
      manifold_kPa: inUnit(predicted.manifoldPressure, 'pressure'),
    },
    gates: step.gates.map(gateJson),
    ifClosed: step.ifClosed,
    reasons: notesJson(step.reasons),
    cautions: notesJson(step.cautions),
  };
}

/** A ladder for scripts and files. */
export function ladderJson(ladder: Ladder): LadderJson {
  const { headroom, routine } = ladder;
  return {
    steps: ladder.steps.map(stepJson),
    boostEnds: ladder.caps.map((c) => ({ end: c.end, boost_kPa: inUnit(c.boost, 'boost') })),
    headroom: headroom && {
      shownBoost_kPa: inUnit(headroom.shownBoost, 'boost'),
      isKnockLimited: headroom.isKnockLimited,
      boost_kPa: [inUnit(headroom.boost[0], 'boost'), inUnit(headroom.boost[1], 'boost')],
      spark_deg: [inUnit(headroom.spark_rad[0], 'angle'), inUnit(headroom.spark_rad[1], 'angle')],
    },
    routine: {
      place: routine.place,
      pulls: routine.pulls,
      bothWays: routine.bothWays,
      coolDown_s: routine.coolDown,
      returnAfter: routine.returnAfter,
    },
    notes: notesJson(ladder.notes),
  };
}
