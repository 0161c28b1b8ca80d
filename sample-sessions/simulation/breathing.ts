import { air, type PullLuck } from './day.ts';
import { clamp } from './engine.ts';
import { lag, step } from './step.ts';

/** Throttle beyond which the manifold is open to the turbocharger. */
const openThrottle = 0.75;

export type Breath = {
  /** Absolute [Pa]. */
  readonly pressure: number;
  /** Gauge [Pa]. */
  readonly boost: number;
  /** After the cooler, before the nozzle [K]. */
  readonly charge: number;
  readonly isOpen: boolean;
};

/**
 * Throttle, turbocharger and cooler. Part throttle holds the manifold below the outside; beyond, boost comes as a
 * damped second-order lag that is quicker at speed, so it arrives late and passes its target by a little.
 */
export function breathing(first: PullLuck) {
  let pressure = 30e3;
  let rate = 0;
  let soak = first.soak;
  let charge = air.temperature + first.soak + 1;

  return (throttle: number, rpm: number, boostTarget: number, luck: PullLuck): Breath => {
    const isOpen = throttle > openThrottle;
    if (isOpen && pressure > air.pressure * 0.93) {
      const reach = 1.35e5 * clamp((rpm - 1500) / 1300, 0, 1);
      const wanted = air.pressure - 3e3 + Math.min(boostTarget + 3e3, reach);
      const w = 2.6 + 3.4 * clamp((rpm - 2300) / 1700, 0, 1);
      rate += (w * w * (wanted - pressure) - 2 * 0.82 * w * rate) * step;
      pressure += rate * step;
    } else {
      const throttled = air.pressure * (0.2 + 0.78 * clamp(throttle / openThrottle, 0, 1) ** 0.9);
      const goal = isOpen ? air.pressure * 0.96 : throttled;
      pressure += (goal - pressure) * lag(0.05);
      rate = 0;
    }
    const boost = pressure - air.pressure;

    // Compressor at 70 %, cooler at 78 %; the cooler itself warms under load and cools while cruising.
    const pressureRatio = Math.max(1, (pressure + 8e3) / (air.pressure - 2e3));
    const outlet = air.temperature * (1 + (pressureRatio ** 0.2857 - 1) / 0.7);
    soak += boost > 20e3 ? 0.45 * step : (luck.soak - soak) * lag(12);
    charge += (air.temperature + 0.22 * (outlet - air.temperature) + soak - charge) * lag(0.4);
    return { pressure, boost, charge, isOpen };
  };
}
