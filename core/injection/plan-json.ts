import { z } from 'zod';
import { hazards } from '../fit/index.ts';
import { NoteJsonSchema, notesJson } from '../result/index.ts';
import { fromSi, tidy } from '../units/index.ts';
import type { Plan } from './plan.ts';
import type { Strategy } from './strategy.ts';
import { strategyNames } from './strategy-points.ts';

const number = z.number();

/** What `plan` answers outside the program: units in the keys, pressures gauge. */
export const PlanJsonSchema = z.object({
  need: z.object({
    fluid_mL_min: number,
    fluid_g_s: number,
    fuel_g_s: number,
    /** Fluid over fuel by mass. */
    ratio: number,
    fuelFrom: z.enum(['power', 'air', 'injectors']),
    ruleOfThumb_mL_min: number.nullable(),
  }),
  nozzle: z.object({
    choice: z.string(),
    delivered_mL_min: number,
    /** Delivered over needed. */
    oversize: number,
    fit: z.enum(['too-small', 'matched', 'oversize', 'much-too-large']),
    others: z.array(
      z.object({ choice: z.string(), delivered_mL_min: number, oversize: number, fit: z.string() }),
    ),
  }),
  strategies: z.array(
    z.object({
      name: z.enum(strategyNames),
      start_kPa: number,
      full_kPa: number,
      /** At the engine speed of peak power; `ratio` is delivered over needed, null where nothing is needed. */
      curve: z.array(
        z.object({
          boost_kPa: number,
          need_mL_min: number,
          delivered_mL_min: number,
          ratio: number.nullable(),
        }),
      ),
      notes: z.array(NoteJsonSchema),
    }),
  ),
  recommended: z.enum(strategyNames),
  endurance: z.object({
    perPull_mL: number,
    perMinute_mL: number,
    pullsPerTank: number.nullable(),
    minutesPerTank: number.nullable(),
    pullsInReserve: number.nullable(),
    usedOverPlanned: number.nullable(),
  }),
  guardBand: z.array(
    z.object({
      boost_kPa: number,
      flow_mL_min: number,
      lowestFlow_mL_min: number,
      highestFlow_mL_min: number,
      lowestPressure_kPa: number,
      highestPressure_kPa: number,
    }),
  ),
  fallback: z.object({ boost_kPa: number.nullable(), actWithin_s: number }),
  fit: z.array(
    z.object({
      id: z.string(),
      hazard: z.enum(hazards),
      weight: number,
      state: z.enum(['passed', 'fix', 'unanswered', 'not-here']),
    }),
  ),
  notes: z.array(NoteJsonSchema),
});
export type PlanJson = z.infer<typeof PlanJsonSchema>;

const mL_min = (flow: number) => tidy(fromSi(flow, 'mL/min'));
const kPa = (pressure: number) => tidy(pressure / 1e3);

function strategyJson(strategy: Strategy): PlanJson['strategies'][number] {
  const { overBoost } = strategy;
  return {
    name: strategy.name,
    start_kPa: kPa(strategy.start),
    full_kPa: kPa(strategy.full),
    curve: overBoost.boost.map((boost, i) => {
      const feed = overBoost.feed[i] ?? null;
      return {
        boost_kPa: kPa(boost),
        need_mL_min: mL_min(overBoost.need[i] ?? 0),
        delivered_mL_min: mL_min(overBoost.delivered[i] ?? 0),
        ratio: feed === null ? null : tidy(feed),
      };
    }),
    notes: notesJson(strategy.notes),
  };
}

/** A plan for scripts and files. Fit items heaviest first, what is broken or unanswered in plain words. */
export function planJson(plan: Plan): PlanJson {
  const { need, nozzle, endurance } = plan;
  const optional = (value: number | null) => (value === null ? null : tidy(value));
  return {
    need: {
      fluid_mL_min: mL_min(need.fluid),
      fluid_g_s: tidy(need.fluidMass * 1e3),
      fuel_g_s: tidy(need.fuel * 1e3),
      ratio: tidy(need.ratio),
      fuelFrom: plan.fuel.basis,
      ruleOfThumb_mL_min: need.ruleOfThumb === null ? null : mL_min(need.ruleOfThumb),
    },
    nozzle: {
      choice: nozzle.names.join(' + '),
      delivered_mL_min: mL_min(nozzle.flow),
      oversize: tidy(nozzle.feed),
      fit: nozzle.fit,
      others: plan.choices
        .filter((c) => c.names.join('\n') !== nozzle.names.join('\n'))
        .slice(0, 9)
        .map((c) => ({
          choice: c.names.join(' + '),
          delivered_mL_min: mL_min(c.flow),
          oversize: tidy(c.feed),
          fit: c.fit,
        })),
    },
    strategies: plan.strategies.map(strategyJson),
    recommended: plan.recommended.name,
    endurance: {
      perPull_mL: tidy(endurance.perPull * 1e6),
      perMinute_mL: tidy(endurance.perMinute * 1e6),
      pullsPerTank: optional(endurance.pullsPerTank),
      minutesPerTank: optional(endurance.minutesPerTank),
      pullsInReserve: optional(endurance.pullsInReserve),
      usedOverPlanned: optional(endurance.usedOverPlanned),
    },
    guardBand: plan.guardBand.map((row) => ({
      boost_kPa: kPa(row.boost),
      flow_mL_min: mL_min(row.flow),
      lowestFlow_mL_min: mL_min(row.lowestFlow),
      highestFlow_mL_min: mL_min(row.highestFlow),
      lowestPressure_kPa: kPa(row.lowestPressure),
      highestPressure_kPa: kPa(row.highestPressure),
    })),
    fallback: {
      boost_kPa: plan.fallback.boost === null ? null : kPa(plan.fallback.boost),
      actWithin_s: plan.fallback.actWithin,
    },
    fit: plan.fit.items.map(({ id, hazard, weight, state }) => ({ id, hazard, weight, state })),
    notes: notesJson([
      ...plan.notes,
      plan.recommended.reason,
      ...plan.endurance.notes,
      ...plan.fallback.notes,
    ]),
  };
}
