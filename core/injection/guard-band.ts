import type { Explanation } from '../units/index.ts';
import { controllerSetting, type SprayContext } from './feed-curve.ts';
import { evenly } from './interpolate.ts';
import { practice } from './practice.ts';
import type { Setup } from './setup.ts';
import type { Strategy } from './strategy.ts';

/** What is still normal at one boost level: flow in m^3/s, pressure behind the pump in Pa gauge. */
export type GuardRow = {
  readonly boost: number;
  readonly flow: number;
  readonly lowestFlow: number;
  readonly highestFlow: number;
  readonly pressure: number;
  readonly lowestPressure: number;
  readonly highestPressure: number;
};

/**
 * Half width of normal flow and of normal pressure, as shares.
 *
 *   flow      sqrt(nozzle^2 + (pump/2)^2 + voltage^2 + sensor^2)
 *   pressure  sqrt(pump^2 + (2 voltage)^2 + sensor^2)
 *
 * Flow goes with the root of pressure, so the pump counts half; voltage counts where the pump's speed meters. A
 * bucket test takes the nozzle's place: twice its own scatter, at least 2 %.
 *
 * Source: JCGM 100:2008, 5.1.2, independent parts; the parts themselves: common practice, editable.
 */
export function guardSpread(setup: Setup, bucketScatter: number | null): { flow: number; pressure: number } {
  const { spread, metering } = setup.fluidSystem;
  const nozzle = bucketScatter === null ? spread.nozzle_percent / 100 : Math.max(0.02, 2 * bucketScatter);
  const pump = spread.pump_percent / 100;
  const voltage = metering === 'pump-speed' ? spread.voltage_percent / 100 : 0;
  const sensor = spread.sensor_percent / 100;
  return {
    flow: Math.hypot(nozzle, pump / 2, voltage, sensor),
    pressure: Math.hypot(pump, 2 * voltage, sensor),
  };
}

/** Rows from where the flow is steady enough to guard up to peak boost. */
export function guardBand(context: SprayContext, strategy: Strategy, rows = 9): readonly GuardRow[] {
  const { path, system, setup } = context;
  const spread = guardSpread(setup, system.bucket?.scatter ?? null);
  const points = { start: strategy.start, full: strategy.full };
  const at = (boost: number) => {
    const setting = controllerSetting(context, points, path.peakSpeed_rad_s, boost);
    const point = setting > 0 ? system.point(context.nozzles, boost, setting) : null;
    return point?.ok ? point.value : null;
  };
  const peak = at(path.peakBoost);
  if (!peak || peak.flow <= 0) return [];
  // First level with a quarter of the peak flow: below it line and pump are still settling (common practice).
  let from = strategy.start;
  for (const boost of evenly(strategy.start, path.peakBoost, 61)) {
    from = boost;
    if ((at(boost)?.flow ?? 0) >= practice.guardFrom * peak.flow) break;
  }
  const levels = from < path.peakBoost ? evenly(from, path.peakBoost, rows) : [path.peakBoost];
  return levels.flatMap((boost) => {
    const point = at(boost);
    if (!point) return [];
    const pressure = point.pumpPressure - system.ambientPressure;
    return [
      {
        boost,
        flow: point.flow,
        lowestFlow: point.flow * (1 - spread.flow),
        highestFlow: point.flow * (1 + spread.flow),
        pressure,
        lowestPressure: pressure * (1 - spread.pressure),
        highestPressure: pressure * (1 + spread.pressure),
      },
    ];
  });
}

/** Where the half width of normal pressure comes from. */
export function explainGuardPressure(setup: Setup): Explanation {
  const { spread, metering } = setup.fluidSystem;
  const isMeteredBySpeed = metering === 'pump-speed';
  return {
    id: 'injection/guard-pressure',
    formula: 'half = sqrt(pump^2 + (2 voltage)^2 + sensor^2)',
    tex: String.raw`h = \sqrt{p^2 + (2u)^2 + s^2}`,
    inputs: [
      { symbol: 'pump', value: spread.pump_percent / 100, kind: 'share' },
      { symbol: 'voltage', value: isMeteredBySpeed ? spread.voltage_percent / 100 : 0, kind: 'share' },
      { symbol: 'sensor', value: spread.sensor_percent / 100, kind: 'share' },
      { symbol: 'half', value: guardSpread(setup, null).pressure, kind: 'share' },
    ],
    source: 'JCGM 100:2008, 5.1.2 for the sum; the parts: common practice',
    validRange: [],
  };
}

export function explainGuardBand(setup: Setup, bucketScatter: number | null): Explanation {
  const { spread, metering } = setup.fluidSystem;
  const half = guardSpread(setup, bucketScatter);
  const nozzle = bucketScatter === null ? spread.nozzle_percent / 100 : Math.max(0.02, 2 * bucketScatter);
  const voltage = metering === 'pump-speed' ? spread.voltage_percent / 100 : 0;
  return {
    id: 'injection/guard-band',
    formula: 'half = sqrt(nozzle^2 + (pump/2)^2 + voltage^2 + sensor^2)',
    tex: String.raw`h = \sqrt{n^2 + (p/2)^2 + u^2 + s^2}`,
    inputs: [
      { symbol: 'nozzle', value: nozzle, kind: 'share' },
      { symbol: 'pump', value: spread.pump_percent / 100, kind: 'share' },
      { symbol: 'voltage', value: voltage, kind: 'share' },
      { symbol: 'sensor', value: spread.sensor_percent / 100, kind: 'share' },
      { symbol: 'half', value: half.flow, kind: 'share' },
    ],
    source: 'JCGM 100:2008, 5.1.2 for the sum; the parts: common practice',
    validRange: [],
  };
}
