/** What is worth saying of the delivery. */
declare module '../result/result.ts' {
  interface NoteFacts {
    /** A measured point that the fit of the others does not reach; flows in m^3/s, `point` counts from 1. */
    'delivery/bucket-point-off': { point: number; measured: number; fitted: number; times: number };
    /** Two points can't tell which of them is off. */
    'delivery/bucket-points-disagree': { times: number };
    /** What was measured over what the ratings say. */
    'delivery/bucket-overrides': { factor: number; points: number };
    'delivery/bucket-far-from-rating': { factor: number };
    'delivery/line-turbulent': { reynolds: number };
    /** Loss in the line as a share of the pressure at the nozzle. */
    'delivery/line-takes-much': { loss: number; pressureDifference: number };
    /** Only its regulator is known. */
    'delivery/pump-curve-unknown': { setPressure: number };
    'delivery/pump-droops': { pressure: number; setPressure: number };
    'delivery/fluid-arrives-late': { delay: number; volume: number; boostThen: number; boostAtStart: number };
    'delivery/line-kept-full': Record<string, never>;
  }
}

export {};
