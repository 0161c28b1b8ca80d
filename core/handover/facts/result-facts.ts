import type { DifferenceCurve } from '../../compare/index.ts';
import { edge, edgeCurve, edgePair } from './edge.ts';
import type { HandoverFacts } from './facts-schema.ts';
import { type HandoverSource, numberOf } from './source.ts';

type Result = NonNullable<HandoverFacts['result']>;
type Peak = Result['peakPower_kW']['before'];

/**
 * Torque at the wheels referred to engine speed, P / w [Nm]: what the engine's own torque less the drivetrain's
 * loss would read, so that before and after stand on one axis whatever the gear.
 */
export function torqueOf(power: ArrayLike<number>, engineSpeed_rad_s: ArrayLike<number>): Float64Array {
  return Float64Array.from(power, (p, i) => p / (engineSpeed_rad_s[i] ?? Number.NaN));
}

/** Highest value and where it stands; null without a finite one. */
function peakOf(values: ArrayLike<number>, speed: ArrayLike<number>, unit: string): Peak {
  let at = -1;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? Number.NaN;
    if (Number.isFinite(value) && (at < 0 || value > (values[at] ?? 0))) at = i;
  }
  const value = edge(values[at], unit);
  const engineSpeed_rpm = edge(speed[at], 'rpm');
  return value === null || engineSpeed_rpm === null ? null : { value, engineSpeed_rpm };
}

/** What all changes together brought, in parts and at the peaks; null where there are not two measured states. */
export function resultFacts({ session, ledger, whole }: HandoverSource): HandoverFacts['result'] {
  const { ladder } = ledger;
  if (!ladder) return null;
  const curve = whole?.curve ?? null;
  const speed = curve?.engineSpeed_rad_s ?? [];
  const power = (side: 'before' | 'after') => (curve ? peakOf(curve[side], speed, 'kW') : null);
  const torque = (side: 'before' | 'after') =>
    curve ? peakOf(torqueOf(curve[side], speed), speed, 'Nm') : null;
  return {
    effect_kW: edge(ladder.effect, 'kW') ?? 0,
    interval95_kW: edgePair(ladder.interval95, 'kW'),
    band_rpm: edgePair(ladder.band_rad_s, 'rpm'),
    fromEntry: numberOf(session, ladder.fromId),
    toEntry: numberOf(session, ladder.toId),
    parts: ladder.parts.map((part) => ({
      kind: part.kind,
      entries: part.entryIds.map((id) => numberOf(session, id)),
      effect_kW: edge(part.effect, 'kW') ?? 0,
      interval95_kW: edgePair(part.interval95, 'kW'),
    })),
    peakPower_kW: { before: power('before'), after: power('after') },
    peakTorque_Nm: { before: torque('before'), after: torque('after') },
  };
}

/** The curves behind it, as lists over engine speed. */
export function curveFacts(curve: DifferenceCurve | null): HandoverFacts['curves'] {
  if (!curve) return null;
  const rpm = (i: number) => edge(curve.engineSpeed_rad_s[i], 'rpm') ?? 0;
  return {
    engineSpeed_rpm: Array.from(curve.engineSpeed_rad_s, (_, i) => rpm(i)),
    before_kW: edgeCurve(curve.before, 'kW'),
    after_kW: edgeCurve(curve.after, 'kW'),
    beforeHalf_kW: edgeCurve(curve.beforeHalf, 'kW'),
    afterHalf_kW: edgeCurve(curve.afterHalf, 'kW'),
    difference_kW: edgeCurve(curve.delta, 'kW'),
    differenceLow_kW: edgeCurve(curve.low, 'kW'),
    differenceHigh_kW: edgeCurve(curve.high, 'kW'),
    proven: curve.proven.map(({ from, to, sign }) => ({ from_rpm: rpm(from), to_rpm: rpm(to - 1), sign })),
  };
}

/** Each change that is shown, with its effect where one may be stated. */
export function changeFacts({ session, ledger }: HandoverSource): HandoverFacts['changes'] {
  const hidden = new Set(session.handover.hiddenEntries);
  return session.ledger.flatMap((entry, number) => {
    const line = ledger.lines.find((l) => l.entryId === entry.id);
    if (!line || hidden.has(entry.id)) return [];
    const { verdict } = line;
    // A comparison that is refused states no effect, here as little as on the sheet.
    const isStated = verdict !== null && verdict.kind !== 'not-comparable';
    const { from = null, to = null, where = '' } = entry.change ?? {};
    return [
      {
        entry: number,
        kind: entry.kind,
        title: entry.title,
        change: entry.change && { from, to, where },
        state: entry.state,
        note: entry.note,
        pulls: line.pulls,
        level_kW: edge(line.level?.mean, 'kW'),
        verdict: verdict?.kind ?? null,
        effect_kW: isStated ? edge(verdict.effect, 'kW') : null,
        interval95_kW: isStated && verdict.interval95 ? edgePair(verdict.interval95, 'kW') : null,
        effect_percent: isStated ? edge(verdict.effectShare, '%') : null,
        morePulls: verdict?.morePulls ?? null,
        adjustedP: edge(line.adjustedP, ''),
        standsAdjusted: line.standsAdjusted,
        reasons: (verdict?.reasons ?? []).map((r) => r.code),
      },
    ];
  });
}
