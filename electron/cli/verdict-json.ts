import type { Verdict, Witness } from '../../core/compare/index.ts';
import { quantities } from '../../core/log/index.ts';
import type { Note } from '../../core/result/index.ts';
import { chosenUnit, fromSi, metricUnits } from '../../core/units/index.ts';
import { noteText } from '../../core/words/index.ts';
import { rounded, roundedList, terminalShow } from './output.ts';

const kilowatts = (watts: number | null) => (watts === null ? null : rounded(watts / 1e3, 3));
const listOf = (watts: Float64Array) =>
  roundedList(
    watts.map((w) => w / 1e3),
    3,
  );

const noteJson = (note: Note) => ({ code: note.code, text: noteText(note, terminalShow) });

/** In the metric unit of its quantity; a difference of an affine unit loses the offset. */
function witnessJson(witness: Witness) {
  const unit = chosenUnit(metricUnits, quantities[witness.quantity]);
  const level = (si: number) => rounded(fromSi(si, unit.id));
  const difference = (si: number) => rounded(si / unit.factor);
  return {
    quantity: witness.quantity,
    unit: unit.symbol,
    before: level(witness.before),
    after: level(witness.after),
    delta: difference(witness.delta),
    ci95: witness.interval95.map(difference),
    declared: witness.declared,
    role: witness.role,
  };
}

/** A verdict in the fixed shape that other programs read; the effect is wheel power, after minus before. */
export function verdictJson(verdict: Verdict) {
  const { curve, band_rad_s, interval95 } = verdict;
  return {
    verdict: verdict.kind,
    effect_kW: kilowatts(verdict.effect),
    ci95_kW: interval95?.map(kilowatts) ?? null,
    effect_percent: verdict.effectShare === null ? null : rounded(verdict.effectShare * 100, 3),
    band_rpm: band_rad_s?.map((w) => rounded(fromSi(w, 'rpm'), 1)) ?? null,
    pullsBefore: verdict.pullsBefore,
    pullsAfter: verdict.pullsAfter,
    morePulls: verdict.morePulls,
    /** Why it can't be compared or stays open; empty where it is decided. */
    reasons: verdict.reasons.map(noteJson),
    /** What is worth saying beside and stops nothing. */
    remarks: verdict.remarks.map(noteJson),
    witnesses: verdict.witnesses.map(witnessJson),
    curve: curve && {
      rpm: roundedList(
        curve.engineSpeed_rad_s.map((w) => fromSi(w, 'rpm')),
        1,
      ),
      before_kW: listOf(curve.before),
      after_kW: listOf(curve.after),
      delta_kW: listOf(curve.delta),
      lo_kW: listOf(curve.low),
      hi_kW: listOf(curve.high),
    },
  };
}
