import { fail, ok, type Result } from '../result/index.ts';
import { type Line, type LiquidState, lineLoss } from './line-loss.ts';
import { outletPressure, type Pump } from './pump.ts';

/** Nozzles that share a line, each against the pressure of the place it sprays into. */
export type NozzleSet = readonly {
  /** [m^2], see nozzle-flow.ts */
  readonly conductance: number;
  /** Absolute, where it sprays into [Pa]. */
  readonly backPressure: number;
}[];

export type DeliverySystem = {
  readonly nozzles: NozzleSet;
  readonly pump: Pump;
  readonly line: Line | null;
  /** The check valve takes this off while it flows, and shuts below it [Pa]. */
  readonly crackingPressure: number;
  readonly liquid: LiquidState;
  /** Absolute, over the tank [Pa]. */
  readonly ambientPressure: number;
  /** Absolute, what a manifold-referenced regulator feels [Pa]. */
  readonly manifoldPressure: number;
};

export type OperatingPoint = {
  /** All nozzles together [m^3/s]. */
  readonly flow: number;
  /** Absolute, behind the pump and its regulator [Pa]. */
  readonly pumpPressure: number;
  /** Across the nozzle that has most left [Pa]. */
  readonly pressureDifference: number;
  readonly lineLoss: number;
};

const nothing = (pumpPressure: number): OperatingPoint => ({
  flow: 0,
  pumpPressure,
  pressureDifference: 0,
  lineLoss: 0,
});

/** What the nozzles take in parallel at an inlet pressure [m^3/s]: flows of parallel nozzles add up. */
export function setFlow(system: DeliverySystem, inletPressure: number): number {
  let flow = 0;
  for (const nozzle of system.nozzles) {
    const difference = inletPressure - system.crackingPressure - nozzle.backPressure;
    if (difference > 0) flow += nozzle.conductance * Math.sqrt(difference / system.liquid.density);
  }
  return flow;
}

/**
 * Where pump, line and nozzles agree.
 *
 *   p_pump(q) - loss(q) = p_inlet,   q = sum k_i sqrt((p_inlet - p_crack - p_back,i) / rho)
 *
 * @param speed  of the pump, 0 to 1
 * @returns      zero flow where a slowed pump does not open the check valve
 *
 * Errors: delivery/pump-weaker-than-boost where even a pump at full speed does not; delivery/no-nozzle.
 * Source: continuity; orifice equation; line-loss.ts; pump.ts.
 */
export function operatingPoint(system: DeliverySystem, speed = 1): Result<OperatingPoint> {
  if (system.nozzles.length === 0) return fail({ code: 'delivery/no-nozzle', facts: {} });
  const at = { ambientPressure: system.ambientPressure, manifoldPressure: system.manifoldPressure, speed };
  const lossOf = (flow: number) => (system.line ? lineLoss(system.line, system.liquid, flow) : 0);
  const surplus = (inlet: number) => {
    const flow = setFlow(system, inlet);
    return outletPressure(system.pump, flow, at) - lossOf(flow) - inlet;
  };
  let lowestBack = Infinity;
  for (const nozzle of system.nozzles) lowestBack = Math.min(lowestBack, nozzle.backPressure);
  let low = lowestBack + system.crackingPressure;
  let high = outletPressure(system.pump, 0, at);
  if (!(high > low)) {
    if (speed < 1) return ok(nothing(Math.max(high, system.ambientPressure)));
    return fail({
      code: 'delivery/pump-weaker-than-boost',
      facts: {
        available: high - system.ambientPressure,
        needed: low - system.ambientPressure,
        boost: system.manifoldPressure - system.ambientPressure,
      },
    });
  }
  // Surplus falls all the way with inlet pressure. False position with Illinois' halving, as the plan solves some
  // thousand of these within a frame: about 8 steps where plain halving takes 40.
  let above = surplus(low);
  let below = surplus(high);
  let inlet = high;
  let side = 0;
  for (let i = 0; i < 60 && high - low > 0.5; i++) {
    inlet = (low * below - high * above) / (below - above);
    const value = surplus(inlet);
    if (Math.abs(value) < 0.5) break;
    if (value > 0) {
      low = inlet;
      above = value;
      if (side === 1) below /= 2;
      side = 1;
    } else {
      high = inlet;
      below = value;
      if (side === -1) above /= 2;
      side = -1;
    }
  }
  const flow = setFlow(system, inlet);
  return ok({
    flow,
    pumpPressure: outletPressure(system.pump, flow, at),
    pressureDifference: Math.max(0, inlet - system.crackingPressure - lowestBack),
    lineLoss: lossOf(flow),
  });
}
