import { ok, type Result } from '../result/index.ts';
import { type DeliverySystem, type OperatingPoint, operatingPoint } from './operating-point.ts';

/** How the amount is set: all or nothing, by the pump's speed, or by the duty of a valve at constant pressure. */
export const meterings = ['on-off', 'pump-speed', 'valve-duty'] as const;
export type Metering = (typeof meterings)[number];

/** A bucket test's word on the model, see bucket-test.ts. */
export type FlowCorrection = {
  /** Measured over modelled. */
  readonly factor: number;
  /** Setting that brings nothing yet; a valve's dead time, say. */
  readonly deadSetting: number;
};
export const noCorrection: FlowCorrection = { factor: 1, deadSetting: 0 };

/**
 * Flow at a controller setting.
 *
 *   on-off      any setting above 0 is all
 *   pump-speed  the operating point at that speed: flow does not follow the setting in a line
 *   valve-duty  setting times the full flow: pressure stays while the valve is open
 *
 * @param setting  0 to 1
 * Errors: those of operatingPoint.
 */
export function meteredPoint(
  system: DeliverySystem,
  metering: Metering,
  setting: number,
  correction: FlowCorrection = noCorrection,
): Result<OperatingPoint> {
  const asked = Math.min(1, Math.max(0, setting));
  const useful = Math.max(0, asked - correction.deadSetting) / (1 - correction.deadSetting);
  const speed = metering === 'pump-speed' ? useful : 1;
  const full = operatingPoint(system, speed);
  if (!full.ok) return full;
  let share = correction.factor;
  if (metering === 'on-off') share *= asked > 0 ? 1 : 0;
  if (metering === 'valve-duty') share *= useful;
  return ok({ ...full.value, flow: full.value.flow * share });
}
