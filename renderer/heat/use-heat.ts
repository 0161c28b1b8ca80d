import { useMemo } from 'react';
import { type ChargeAlong, chargeAlong } from '../../core/charge/index.ts';
import { planOf, speedAtBoost } from '../../core/injection/index.ts';
import { chargeModel, sameDay } from '../../core/ladder/index.ts';
import { type Note, ok, type Result } from '../../core/result/index.ts';
import { type SheetDoc, setupOf } from '../sheets/sheet-doc.ts';

/** Where on the pull the charge is looked at: as soon as boost is there, or at peak power. */
export const heatPlaces = ['early', 'peak'] as const;
export type HeatPlace = (typeof heatPlaces)[number];

export type HeatNow = {
  readonly boost: number;
  readonly engineSpeed_rad_s: number;
  readonly wet: ChargeAlong;
  readonly dry: ChargeAlong;
  /** What of the charge rests on practice. */
  readonly notes: readonly Note[];
};

/** The charge along its way with the spray on and off, of what is typed now. */
export function useHeat(doc: SheetDoc, place: HeatPlace): Result<HeatNow> {
  return useMemo(() => {
    const setup = setupOf(doc);
    const plan = planOf(setup);
    if (!plan.ok) return plan;
    const model = chargeModel(setup, plan.value, {
      ...sameDay,
      relativeHumidity_percent: doc.conditions.relativeHumidity_percent,
    });
    if (!model.ok) return model;
    const { path } = plan.value;
    const boost = path.peakBoost;
    const early = Math.min(1.1 * speedAtBoost(path, 0.98 * boost), path.peakSpeed_rad_s);
    const engineSpeed_rad_s = place === 'early' ? early : path.peakSpeed_rad_s;
    const wet = chargeAlong(model.value.path(boost, engineSpeed_rad_s, true));
    if (!wet.ok) return wet;
    const dry = chargeAlong(model.value.path(boost, engineSpeed_rad_s, false));
    if (!dry.ok) return dry;
    return ok({ boost, engineSpeed_rad_s, wet: wet.value, dry: dry.value, notes: model.value.notes });
  }, [doc, place]);
}
