import type { Substance } from '../substance.ts';

const criticalTemperature = 514.0;

export const ethanol: Substance = {
  id: 'ethanol',
  molarMass: 46.068e-3,
  molarMassSource: 'CRC Handbook, 102nd ed., Concentrative Properties of Aqueous Solutions',
  elements: { C: 2, H: 6, O: 1 },
  boilingPoint: {
    temperature: 78.26 + 273.15,
    source: 'CRC Handbook (351.39 and 351.44 K in two of its tables)',
  },
  lowerHeatingValue: 26.82e6,
  lowerHeatingValueSource: 'Active Thermochemical Tables 1.112, liquid at 25 C',
  flashPoint: {
    temperature: 12 + 273.15,
    source: 'IEC 60079-20-1 (12 C); NFPA 497 says 13: the lower is shown',
  },
  curves: {
    density: {
      form: 'polynomial',
      coefficients: [789.248913, -0.854625942, -4.41551535e-4, -7.44862499e-6],
      criticalTemperature,
      valid: { from: 253.15, to: 353.15 },
      worstError: 1e-3,
      source:
        'shape of the reference equation of state (Schroeder, Penoncello and Schroeder 2014), level of OIML R 22 at 20 C',
    },
    latentHeat: {
      form: 'watson',
      coefficients: [1207187.626, 0.70562379, -1.16370377, 0.8553556],
      criticalTemperature,
      valid: { from: 253.15, to: 423.15 },
      worstError: 1e-2,
      source:
        'shape of the reference equation of state (Schroeder et al. 2014) times 0.99455: least squares over CRC Handbook at 25 C, the centre of four sources at 78.3 C and US DOE at 60 F',
    },
    vapourPressure: {
      form: 'antoine',
      coefficients: [10.33675, 1648.22, -42.232],
      criticalTemperature,
      // Published for 276.5 to 369.54 K. Carried on, it reads 3.8 % low at -20 C and 1.7 % high at 110 C.
      valid: { from: 253.15, to: 383.15 },
      worstError: 0.04,
      source: 'Poling, Prausnitz and O’Connell, The Properties of Gases and Liquids, 5th ed., appendix A',
    },
    liquidHeatCapacity: {
      form: 'polynomial',
      coefficients: [2399.465, 7.570369, 0.02886284, -2.465968e-5],
      criticalTemperature,
      valid: { from: 253.15, to: 373.15 },
      worstError: 3e-3,
      source:
        'shape of the reference equation of state (Schroeder et al. 2014), level of the CRC Handbook at 25 C (112.3 J/(mol K))',
    },
    vapourHeatCapacity: {
      form: 'polynomial',
      coefficients: [1407.457, 3.320825, 2.646798e-3, -1.79556e-5, 2.357475e-8],
      criticalTemperature,
      valid: { from: 253.15, to: 573.15 },
      worstError: 7e-3,
      source:
        'shape of the ideal-gas part of the reference equation of state (Schroeder et al. 2014), level of the CRC Handbook at 25 C (65.6 J/(mol K))',
    },
    viscosity: {
      form: 'log-inverse',
      coefficients: [-12.674894189762403, 2249.7725414178503, -0.12891736505005755, -85083.072830285],
      criticalTemperature,
      valid: { from: 253.15, to: 353.15 },
      worstError: 0.02,
      source:
        'fitted to the reference correlation (Kiselev et al. 2005) within 0.04 %, level of the CRC Handbook at 20 C',
    },
  },
};
