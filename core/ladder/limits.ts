import { celsius } from '../units/index.ts';

/** Where the tuner stops, SI; null is "no limit known" and closes no gate. */
export type LadderLimits = {
  /** Effects below this share of power count as nothing. */
  readonly margin: number;
  readonly leanestLambda: number;
  /** Share of the time. */
  readonly injectorDuty: number;
  /** At the intake and the exhaust [K]. */
  readonly intake: number | null;
  readonly exhaust: number | null;
  readonly knockEvents: number;
  /** Manifold, absolute [Pa]. */
  readonly mapCeiling: number | null;
  /** Gauge [Pa]. */
  readonly boostCeiling: number | null;
  /** As logged, gauge [Pa]. */
  readonly fluidPressureLowest: number | null;
};

/** Limits as a session or a file states them, unit in the key. */
export type StatedLimits = {
  readonly margin_percent?: number;
  readonly leanestLambda?: number;
  readonly injectorDuty_percent?: number;
  readonly intake_C?: number | null;
  readonly exhaust_C?: number | null;
  readonly knockEvents?: number;
  readonly mapCeiling_kPa?: number | null;
  readonly boostCeiling_kPa?: number | null;
  readonly fluidPressureLowest_kPa?: number | null;
};

const pascal = (kPa: number | null | undefined) => (kPa === null || kPa === undefined ? null : kPa * 1e3);

/**
 * Limits in SI, with those of practice where nobody stated one: lambda 0.90, duty 85 %, intake 60 C, exhaust 950 C,
 * one knock event (common practice).
 */
export function ladderLimits(stated: StatedLimits = {}): LadderLimits {
  const kelvin = (value: number | null | undefined, practice: number) =>
    value === null ? null : celsius(value ?? practice);
  return {
    margin: (stated.margin_percent ?? 1) / 100,
    leanestLambda: stated.leanestLambda ?? 0.9,
    injectorDuty: (stated.injectorDuty_percent ?? 85) / 100,
    intake: kelvin(stated.intake_C, 60),
    exhaust: kelvin(stated.exhaust_C, 950),
    knockEvents: stated.knockEvents ?? 1,
    mapCeiling: pascal(stated.mapCeiling_kPa),
    boostCeiling: pascal(stated.boostCeiling_kPa),
    fluidPressureLowest: pascal(stated.fluidPressureLowest_kPa),
  };
}
