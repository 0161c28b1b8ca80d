import { conductance, type DeliverySystem, pumpFromTwo } from '../../core/delivery/index.ts';
import { unwrap } from '../../core/result/index.ts';
import { toSi } from '../../core/units/index.ts';

export const mL_min = (value: number) => toSi(value, 'mL/min');
export const kPa = (value: number) => value * 1e3;

/** A nozzle of `flow_mL_min` at 700 kPa with water. */
export const rated = (flow_mL_min: number) => ({
  flow: mL_min(flow_mL_min),
  pressureDifference: kPa(700),
  density: 998.2,
});

/** An invented system: pump of 1.2 MPa and 1.8 L/min, half and half fluid at 20 C, no line, one nozzle. */
export function systemWith(
  change: Partial<DeliverySystem> & { nozzle_mL_min?: number; boost?: number } = {},
): DeliverySystem {
  const { nozzle_mL_min = 300, boost = kPa(100), ...rest } = change;
  return {
    nozzles: [{ conductance: conductance(rated(nozzle_mL_min)), backPressure: kPa(101.325) + boost }],
    pump: { curve: unwrap(pumpFromTwo(kPa(1200), mL_min(1800))), setPressure: null, reference: 'ambient' },
    line: null,
    crackingPressure: 0,
    liquid: { density: 926.9, viscosity: 1.8e-3 },
    ambientPressure: kPa(101.325),
    manifoldPressure: kPa(101.325) + boost,
    ...rest,
  };
}
