import type { BucketFit, OperatingPoint } from '../delivery/index.ts';
import type { Explanation } from '../units/index.ts';
import type { FluidSystemModel } from './fluid-system.ts';
import type { Setup } from './setup.ts';

/** Where the flow at peak comes from. */
export function explainNozzle(system: FluidSystemModel, peak: OperatingPoint): Explanation {
  return {
    id: 'delivery/nozzle-flow',
    formula: 'q = q_r sqrt((dp / dp_r) (rho_r / rho))',
    tex: String.raw`q = q_r\sqrt{\frac{\Delta p}{\Delta p_r}\,\frac{\rho_r}{\rho}}`,
    inputs: [
      { symbol: 'dp', value: peak.pressureDifference, kind: 'fluidPressure', isDifference: true },
      { symbol: 'rho', value: system.density, kind: 'density' },
      { symbol: 'q', value: peak.flow, kind: 'volumeFlow' },
    ],
    source: 'orifice equation, Cengel and Cimbala, Fluid Mechanics, ch. 8',
    validRange: [{ symbol: 'dp', from: 0, to: 2e6, kind: 'fluidPressure', isDifference: true }],
  };
}

/** Where the pressure across the nozzle at peak comes from. */
export function explainDifference(
  setup: Setup,
  system: FluidSystemModel,
  boost: number,
  peak: OperatingPoint,
): Explanation {
  return {
    id: 'delivery/pressure-difference',
    formula: 'dp = p_pump - loss - check valve - p at the nozzle, all over ambient',
    tex: String.raw`\Delta p = p_\mathrm{pump}-\Delta p_\mathrm{line}-p_\mathrm{check}-p_\mathrm{nozzle}`,
    inputs: [
      { symbol: 'p_pump', value: peak.pumpPressure - system.ambientPressure, kind: 'fluidPressure' },
      { symbol: 'loss', value: peak.lineLoss, kind: 'fluidPressure', isDifference: true },
      {
        symbol: 'check valve',
        value: (setup.fluidSystem.checkValve_kPa ?? 0) * 1e3,
        kind: 'fluidPressure',
        isDifference: true,
      },
      { symbol: 'boost', value: boost, kind: 'boost' },
    ],
    source: 'balance of pressures; loss: Hagen-Poiseuille and Blasius; pump: its curve and what holds it',
    validRange: [],
  };
}

/** Where factor and scatter of the bucket test come from. */
export function explainBucket(bucket: BucketFit): Explanation {
  return {
    id: 'delivery/bucket',
    formula: 'measured = factor q_model; scatter = standard deviation of measured / fitted',
    inputs: [
      { symbol: 'factor', value: bucket.correction.factor, kind: 'number' },
      { symbol: 'setting that brings nothing', value: bucket.correction.deadSetting, kind: 'share' },
      { symbol: 'scatter', value: bucket.scatter, kind: 'share' },
      { symbol: 'points', value: bucket.points.filter((p) => !p.isOff).length, kind: 'number' },
    ],
    source: 'weighted least squares over the points; uncertainties: JCGM 100:2008',
    validRange: [],
  };
}
