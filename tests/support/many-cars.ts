import { rpm } from '../../core/units/index.ts';
import { boostedCurve, type Drive, type Driven, drive } from './drive-generator.ts';
import { seeded } from './random.ts';

/** Evenly drawn between two numbers. */
export type Between = (low: number, high: number) => number;
/** What the logger does to the channels. */
export type Logged = Partial<Drive>;

export type CarsOptions = {
  readonly count: number;
  readonly seed: number;
  /** Drawn anew for each pull. */
  readonly sensors: (between: Between) => Logged;
  /** Second gear and a boost onset over 80 to 250 rpm in place of third and fourth over 120 to 400. */
  readonly isHard?: boolean;
};

const kmh = 1 / 3.6;

/** Steps of 1 rpm and 0.1 km/h with realistic noise. */
export const fine = (between: Between) => ({
  engineSpeed: { noise: rpm(between(2, 8)), step: rpm(1) },
  vehicleSpeed: { noise: between(0.03, 0.1) * kmh, step: 0.1 * kmh },
});
/** Steps of 25 rpm and 1 km/h. */
export const coarse = (between: Between) => ({
  engineSpeed: { noise: rpm(between(0, 6)), step: rpm(25) },
  vehicleSpeed: { noise: between(0, 0.1) * kmh, step: kmh },
});

/** One pull each of so many invented cars, with its truth. */
export function manyCars({ count, seed, sensors, isHard = false }: CarsOptions): Driven[] {
  const uniform = seeded(seed);
  const between: Between = (low, high) => low + (high - low) * uniform();
  return Array.from({ length: count }, (_, i) => {
    const mass = between(950, 2000);
    return drive({
      seed: i + 1,
      mass,
      wheelPower: boostedCurve(
        mass * (isHard ? between(0.12, 0.22) : between(0.14, 0.3)),
        between(2000, 3600),
        isHard ? between(80, 250) : between(120, 400),
        between(4500, 5800),
        between(0.1, 0.4),
      ),
      gearRatio: isHard ? between(1.75, 2.2) : i % 2 === 0 ? between(1.25, 1.45) : between(0.95, 1.1),
      finalDrive: between(3.4, 4.3),
      slip: between(0, 0.03),
      wheelInertia: between(2.5, 5),
      dragArea: between(0.5, 0.9),
      rolling: between(0.009, 0.015),
      rpmFrom: between(2000, 2800),
      rpmTo: between(5800, 7000),
      jitter: between(0, 0.3),
      ...sensors(between),
    });
  });
}
