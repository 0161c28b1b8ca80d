import { fail, type Problem, type Result } from '../result/index.ts';
import type { Setup } from './setup.ts';

/** Problems with the field of the setup that they are mended in, for a screen to show them beside it. */
export function inField<T>(result: Result<T>, field: string): Result<T> {
  if (result.ok) return result;
  const [first, ...rest] = result.problems.map((p): Problem => (p.where ? p : { ...p, where: { field } }));
  return first ? fail(first, ...rest) : result;
}

/** Where a fault of the mix is mended: at the share that is wrong, else at the larger one. */
export function mixField(setup: Setup, mix: Result<unknown>): string {
  const problem = mix.ok ? null : mix.problems[0];
  if (problem?.code === 'fluids/temperature-outside') return 'fluidSystem.fluid_C';
  const { methanol_percent = 0, ethanol_percent = 0 } = setup.fluidSystem.mix ?? {};
  const isEthanol =
    problem?.code === 'fluids/share-negative'
      ? problem.facts.substance === 'ethanol'
      : ethanol_percent > methanol_percent;
  return `fluidSystem.mix.${isEthanol ? 'ethanol' : 'methanol'}_percent`;
}

/** Where a curve of the pump that can't be is mended. */
export function pumpCurveField(setup: Setup): string {
  return `fluidSystem.pump.${setup.fluidSystem.pump.points.length > 0 ? 'points' : 'openFlow_mL_min'}`;
}

/** Where a pump is mended that does not reach the pressure it has to. */
export function pumpPressureField(setup: Setup): string {
  const { control, points } = setup.fluidSystem.pump;
  if (control !== 'none') return 'fluidSystem.pump.setPressure_kPa';
  return `fluidSystem.pump.${points.length > 0 ? 'points' : 'shutPressure_kPa'}`;
}
