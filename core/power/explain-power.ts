import { explainAirflowPower } from './air/airflow-power.ts';
import { explainCorrection } from './air/correction-factor.ts';
import { explainAirDensity } from './air/moist-air.ts';
import { explainGearing } from './car/gearing.ts';
import { explainRollingRadius } from './car/tyre-size.ts';
import { explainCoastDown } from './coast-down/coast-down.ts';
import { type FormulaCard, input } from './explain.ts';
import { explainEnginePower, explainWheelPower } from './power-of-pull.ts';
import { explainRoadLoad } from './road-load.ts';
import { explainTwoWay } from './two-way.ts';

const explainWheelPowerError: FormulaCard = {
  formula: 'u = |dP/d(v, a)| sigma(v, a); sigma as the spline leaves speed and acceleration open',
  inputs: [
    input('sigma', 'm/s, m/s^2', 'standard errors of the spline and how they go together'),
    input('P', 'W', 'wheel power from speed v and acceleration a'),
  ],
  source: 'propagation of independent errors, JCGM 100:2008, equation 10',
  validRange:
    'noise and smoothing of this pull alone; what repeats differ by is seen in the pulls themselves',
};

const explainSystematicError: FormulaCard = {
  formula: 'u^2 = sum (dP/dx u(x))^2 over mass, road load, slope, speed scale',
  inputs: [
    input('x', 'of each input', 'input as entered'),
    input('u(x)', 'of each input', 'its uncertainty'),
  ],
  source: 'JCGM 100:2008, equation 10; sizes are common practice where not entered',
  validRange: 'common to all pulls of the car: it cancels between two entries',
};

const explainBandwidth: FormulaCard = {
  formula:
    'smoothing spline: sum w (y - s(t))^2 + sum b_j^2 / q_j is least; q_j read from the bends b around',
  inputs: [
    input('t', 's', 'full width at half height of the kernel that the true slope is seen through, mid-pull'),
  ],
  source:
    'MacKay, Neural Computation 4 (1992) 415; Eilers and Marx, Statistical Science 11 (1996) 89 (from memory)',
  validRange:
    'narrower where the pull bends, wider where it is straight; what is narrower still is flattened',
};

const explainSlip: FormulaCard = {
  formula: 'w / v = (1 + s F / Fmax) / d',
  inputs: [
    input('w', 'rad/s', 'engine speed'),
    input('v', 'm/s', 'logged road speed'),
    input('F', 'N', 'tractive force'),
    input('d', 'm', 'distance per radian without slip'),
  ],
  source: 'linear tyre slip; 1 to 3 % at full load is common practice',
  validRange: 'both speeds logged, clutch closed, no wheel spin',
};

/** What stands behind each number of this area that a person can ask about. */
export const explainPower = {
  wheelPower: explainWheelPower,
  enginePower: explainEnginePower,
  wheelPowerError: explainWheelPowerError,
  systematicError: explainSystematicError,
  bandwidth: explainBandwidth,
  slip: explainSlip,
  gearing: explainGearing,
  rollingRadius: explainRollingRadius,
  roadLoad: explainRoadLoad,
  coastDown: explainCoastDown,
  airDensity: explainAirDensity,
  'SAE J1349': explainCorrection['SAE J1349'],
  'ISO 1585': explainCorrection['ISO 1585'],
  'DIN 70020': explainCorrection['DIN 70020'],
  twoWay: explainTwoWay,
  airflowPower: explainAirflowPower,
} as const satisfies Record<string, FormulaCard>;
