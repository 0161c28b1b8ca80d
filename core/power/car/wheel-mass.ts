import type { Note } from '../../result/index.ts';
import { practice } from '../practice.ts';
import type { Car } from './car.ts';
import { rollingRadius } from './gearing.ts';

/**
 * Mass that the turning wheels add to the car's own: Iw / r^2 [kg]; none where the car file is silent.
 *
 * Check: 4 kg m^2 on 0.312 m are 41.1 kg.
 */
export function wheelMass(car: Car): { readonly mass: number; readonly notes: readonly Note[] } {
  if (car.wheelInertia_kg_m2 === null)
    return {
      mass: 0,
      notes: [{ code: 'power/wheel-inertia-not-counted', facts: { share: practice.wheelInertiaShare } }],
    };
  if (car.wheelInertia_kg_m2 === 0) return { mass: 0, notes: [] };
  const tyre = rollingRadius(car);
  // 0.31 m is a usual car tyre: the wheels are some 3 % of the mass, so 5 % of radius is 0.3 % of power.
  const radius = tyre.radius ?? 0.31;
  return { mass: car.wheelInertia_kg_m2 / radius ** 2, notes: [] };
}
