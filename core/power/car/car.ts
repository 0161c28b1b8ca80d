import { z } from 'zod';
import { correctionStandards } from '../pull-power.ts';

const positive = z.number().positive();
const share = z.number().min(0).max(1);

/**
 * The car as far as power needs it: the part of the session that CAR.json holds. Units stand in the field
 * names. Everything but the mass may be left out; a default is common practice and is said so wherever a
 * number rests on it.
 */
export const CarSchema = z.looseObject({
  name: z.string().max(200).default(''),
  /** As driven: car, people, fuel, luggage. */
  mass_kg: positive.max(20_000),
  /** Half of the 95 % interval of the mass. */
  massUncertainty_kg: z.number().min(0).nullable().default(null),
  /** Gear 1 first. */
  gearRatios: z.array(positive.max(30)).max(12).default([]),
  finalDrive: positive.max(30).nullable().default(null),
  /** Dynamic rolling radius: distance rolled per turn over 2 pi. */
  rollingRadius_m: positive.max(2).nullable().default(null),
  /** As on the sidewall, '225/45 R17'; used where no rolling radius is given. */
  tyre: z.string().max(40).nullable().default(null),
  /** Gear the pulls are driven in, where the log does not tell. */
  pullGear: z.int().min(1).max(12).nullable().default(null),
  /** All wheels, tyres, discs and half shafts together, about their axles. */
  wheelInertia_kg_m2: z.number().min(0).nullable().default(null),
  /** Crank, flywheel, clutch, accessories. */
  engineInertia_kg_m2: z.number().min(0).nullable().default(null),
  /** Drag coefficient times frontal area. */
  dragArea_m2: z.number().min(0).max(5).nullable().default(null),
  rollingCoefficient: z.number().min(0).max(0.1).nullable().default(null),
  /**
   * Measured by coast-down, beats drag area and rolling coefficient: F = a + b v + c v^2, v in m/s. Counts once all
   * three are there. `half_percent` is half of the 95 % interval of the force.
   */
  roadLoad: z
    .looseObject({
      a_N: z.number().min(-500).max(5000).nullable().default(null),
      b_N_s_m: z.number().min(-100).max(200).nullable().default(null),
      c_N_s2_m2: z.number().min(-1).max(5).nullable().default(null),
      half_percent: z.number().min(0).max(100).nullable().default(null),
    })
    .nullable()
    .default(null),
  /** Wheel power over crank power, tyre slip included; 0.82 to 0.92 by practice. */
  drivetrainEfficiency: share.nullable().default(null),
  /** Share by which the driven tyres run ahead of the road at full load. */
  tyreSlip: share.nullable().default(null),
  correction: z.enum(correctionStandards).default('none'),
});
export type Car = z.infer<typeof CarSchema>;
/** What may be typed for a car: every field with a default may be missing. */
export type CarInput = z.input<typeof CarSchema>;
