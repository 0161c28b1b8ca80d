import type { Substance } from '../substance.ts';

const criticalTemperature = 512.6;

export const methanol: Substance = {
  id: 'methanol',
  molarMass: 32.042e-3,
  molarMassSource: 'CRC Handbook, 102nd ed., Concentrative Properties of Aqueous Solutions',
  elements: { C: 1, H: 4, O: 1 },
  boilingPoint: { temperature: 64.5 + 273.15, source: 'CRC Handbook (337.65 K)' },
  lowerHeatingValue: 19.93e6,
  lowerHeatingValueSource: 'Active Thermochemical Tables 1.112, liquid at 25 C',
  flashPoint: {
    temperature: 9 + 273.15,
    source: 'IEC 60079-20-1 (9 C); NFPA 497 says 12: the lower is shown',
  },
  curves: {
    density: {
      form: 'polynomial',
      coefficients: [791.51, -0.935162535, -1.71961459e-4, -7.44063759e-6],
      criticalTemperature,
      valid: { from: 253.15, to: 353.15 },
      worstError: 1e-3,
      source:
        'shape of the reference equation of state (de Reuck and Craven 1993), level of the CRC Handbook at 20 C (0.7914 and 0.7917 in two of its tables)',
    },
    latentHeat: {
      form: 'watson',
      coefficients: [1761073.893, 1.17272776, -1.87189088, 1.15088974],
      criticalTemperature,
      valid: { from: 253.15, to: 423.15 },
      worstError: 5e-3,
      source:
        'shape of the reference equation of state (de Reuck and Craven 1993) times 0.99747: least squares over CRC Handbook at 25 and 64.5 C and US DOE at 60 F',
    },
    vapourPressure: {
      form: 'antoine',
      coefficients: [10.20277, 1580.08, -33.65],
      criticalTemperature,
      // Published for 262.59 to 356 K. Carried on to both sides, it stays within 2 % of the reference equation of state.
      valid: { from: 253.15, to: 383.15 },
      worstError: 0.02,
      source: 'Poling, Prausnitz and O’Connell, The Properties of Gases and Liquids, 5th ed., appendix A',
    },
    liquidHeatCapacity: {
      form: 'polynomial',
      coefficients: [2504.894, 5.826374, 0.03142336, -7.165342e-6],
      criticalTemperature,
      valid: { from: 253.15, to: 373.15 },
      worstError: 2e-3,
      source: 'fitted to the reference equation of state (de Reuck and Craven 1993) within 0.02 %',
    },
    vapourHeatCapacity: {
      form: 'polynomial',
      coefficients: [1364.099, 1.923012, 5.274166e-3, -1.826785e-5, 1.95189e-8],
      criticalTemperature,
      valid: { from: 253.15, to: 573.15 },
      worstError: 2e-3,
      source:
        'fitted to the ideal-gas part of the reference equation of state (de Reuck and Craven 1993) within 0.01 %',
    },
    viscosity: {
      form: 'log-inverse',
      coefficients: [-2.7306335748434765, 713.717623074729, -1.3139880721497905, 27356.78744901536],
      criticalTemperature,
      valid: { from: 253.15, to: 353.15 },
      worstError: 0.02,
      source:
        'fitted to the reference correlation (Xiang, Laesecke and Huber 2006) within 0.05 %, level of the CRC Handbook at 20 C',
    },
  },
};
