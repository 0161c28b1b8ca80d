import type { Plan } from '../injection/index.ts';
import type { ChargeModel } from './charge-of-setup.ts';
import { fuelPumpDelivery } from './fuel-pump.ts';
import type { GateContext } from './gates-of.ts';
import type { LadderInput } from './ladder-input.ts';

/** What the gates of an entry at a boost [Pa gauge] are held against. */
export function gateContext(
  input: LadderInput,
  plan: Plan,
  model: ChargeModel,
  isSprayOn: boolean,
  boost: number,
): GateContext {
  const { engine, fluidSystem } = input.setup;
  const planned = model.fluidFlow(boost, plan.path.peakSpeed_rad_s);
  return {
    limits: input.limits,
    ambientTemperature: model.ambientTemperature,
    ambientPressure: model.ambientPressure,
    mapSensor: engine.mapSensor_kPa === null ? null : engine.mapSensor_kPa * 1e3,
    fuelPump: fuelPumpDelivery(input.setup),
    isSprayOn,
    plannedFlow: planned > 0 ? planned : null,
    reserveShare:
      fluidSystem.tank_L === null || fluidSystem.reserve_L === null
        ? null
        : fluidSystem.reserve_L / fluidSystem.tank_L,
  };
}
