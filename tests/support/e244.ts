import { chargeAlong, knockIntegral, trapped } from '../../core/charge/index.ts';
import { pure } from '../../core/fluids/index.ts';
import { unwrap } from '../../core/result/index.ts';

const inHg = 3386.389;

/**
 * The engine of NACA E-244, all of it from memory: 12 cylinders, ratio 6.65, geared centrifugal supercharger
 * between carburettor and manifold at a fixed share of engine speed, so it adds one pressure ratio and one
 * temperature rise whatever the throttle does. Spray and petrol pass through it and leave as mist.
 */
export const e244 = {
  pressureRatio: 2.2,
  rise: 110,
  crank: { compressionRatio: 6.65, rodToCrank: 3.4 },
  closing_rad: (-118 * Math.PI) / 180,
  spark_rad: (30 * Math.PI) / 180,
  burnDuration_rad: (60 * Math.PI) / 180,
  /** Walls and burnt gas, before the petrol's own cooling [K]. */
  warming: 40,
  evaporatedInCylinder: 0.5,
};

/** Knock integral of that engine. */
export function e244Integral(of: {
  air_F: number;
  fuelAir: number;
  waterFuel: number;
  manifold_inHg: number;
}): number {
  const inlet = 273.15 + ((of.air_F - 32) * 5) / 9;
  const manifoldPressure = of.manifold_inHg * inHg;
  const k = 1.4;
  const isentropic = inlet * (e244.pressureRatio ** ((k - 1) / k) - 1);
  const along = unwrap(
    chargeAlong({
      ambient: { pressure: manifoldPressure / e244.pressureRatio, temperature: inlet, relativeHumidity: 0 },
      manifoldPressure,
      compressor: { efficiency: isentropic / e244.rise },
      cooler: null,
      spray:
        of.waterFuel > 0
          ? {
              mix: pure('water'),
              fluidOverAir: of.waterFuel * of.fuelAir,
              temperature: 293.15,
              place: 'before-compressor',
              dropDiameter: 10e-6,
              way: { length: 2, bore: 0.2 },
            }
          : null,
      airFlow: 2.5,
    }),
  );
  // Petrol evaporates on the way: 330 kJ/kg, most of it before the valve shuts.
  const petrolCooling = (of.fuelAir * 330e3) / 1050;
  const cylinder = trapped(along.port, {
    warming: e244.warming - petrolCooling,
    evaporatedInCylinder: e244.evaporatedInCylinder,
  });
  return knockIntegral({
    crank: e244.crank,
    closing_rad: e244.closing_rad,
    pressure: manifoldPressure,
    temperature: cylinder.temperature,
    engineSpeed_rad_s: (3000 * Math.PI) / 30,
    octane: 100,
    spark_rad: e244.spark_rad,
    burnDuration_rad: e244.burnDuration_rad,
    heat: cylinder.heat,
    exponent: cylinder.exponent,
  });
}

/** Manifold pressure [inHg] that gives the same integral as a shown point. */
export function e244Limit(
  shown: Parameters<typeof e244Integral>[0],
  asked: Omit<Parameters<typeof e244Integral>[0], 'manifold_inHg'>,
): number {
  const target = e244Integral(shown);
  let [low, high] = [10, 300];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (e244Integral({ ...asked, manifold_inHg: middle }) < target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
