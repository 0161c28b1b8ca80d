import { type OnePullBandWire, type PullCurve, toSamples } from '../../core/contract/index.ts';
import { onePullBand } from '../../core/power/index.ts';
import type { AnalysedPull } from '../../core/session/index.ts';
import { keptSamples } from './thinned-channel.ts';

/** Of all curves together: more than a plot has pixels for, few enough to be read and drawn without a halt. */
const mostOfAll = 20_000;
/** Of one curve, so that its shape is still seen among hundreds. */
const leastOfOne = 60;

/** Samples that each of so many curves may bring. */
export const samplesOfCurve = (curves: number): number =>
  Math.max(leastOfOne, Math.floor(mostOfAll / Math.max(1, curves)));

/**
 * Power of one pull for drawing, with `most` samples; its highest and lowest are always among them.
 *
 * @returns  null where the pull has no power
 */
export function pullCurve({ id, runId, power }: AnalysedPull, most: number): PullCurve | null {
  if (!power) return null;
  const kept = keptSamples(power.wheelPower, 0, power.wheelPower.length, most);
  const of = (values: Float64Array) =>
    kept.map((i) => (Number.isFinite(values[i] as number) ? (values[i] as number) : null));
  return {
    pullId: id,
    runId,
    engineSpeed_rad_s: of(power.engineSpeed_rad_s),
    wheelPower: of(power.wheelPower),
  };
}

/** How far off one of these pulls may be, for drawing; null where that can't be told. */
export function bandOfCurves(pulls: readonly AnalysedPull[]): OnePullBandWire | null {
  const band = onePullBand(pulls.flatMap(({ power }) => power ?? []));
  return (
    band && {
      engineSpeed_rad_s: toSamples(band.engineSpeed_rad_s),
      low: toSamples(band.low),
      high: toSamples(band.high),
    }
  );
}
