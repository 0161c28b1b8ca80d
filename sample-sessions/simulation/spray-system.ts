import { clamp } from './engine.ts';
import { spray } from './hatch.ts';
import { lag, step } from './step.ts';

/**
 * A pump at constant pressure and a valve at the nozzle that opens with boost: from the start point to the full
 * point in proportion. Fluid arrives late, and the nozzle sees the pump less boost less the check valve.
 */
export function spraySystem() {
  const commanded: number[] = [];
  let flow = 0;

  return (isArmed: boolean, throttle: number, boost: number, better: number) => {
    const duty =
      isArmed && throttle > 0.5
        ? clamp((boost - spray.startBoost) / (spray.fullBoost - spray.startBoost), 0, 1)
        : 0;
    commanded.push(duty);
    const arrived = commanded.length > spray.delay / step ? (commanded.shift() ?? 0) : 0;
    const pressure = isArmed ? spray.pumpPressure - 0.6e5 * duty : 0;
    const difference = Math.max(0, pressure - Math.max(0, boost) - spray.checkValve);
    const full =
      spray.nozzleFlow * Math.sqrt((difference / spray.nozzleRatedDifference) * (998 / spray.density));
    flow += (arrived * full * (1 + better) - flow) * lag(spray.rise);
    return { flow, pressure, duty };
  };
}
