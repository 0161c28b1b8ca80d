import type { Substance } from '../substance.ts';

const criticalTemperature = 647.096;
/** Below 0 C as a part of a mix that has not frozen; whether it has is a question of its own. */
const liquid = { from: 253.15, to: 373.15 };

export const water: Substance = {
  id: 'water',
  molarMass: 18.015e-3,
  molarMassSource: 'IAPWS-IF97 and IUPAC atomic weights',
  elements: { C: 0, H: 2, O: 1 },
  boilingPoint: { temperature: 99.974 + 273.15, source: 'IAPWS-IF97' },
  lowerHeatingValue: 0,
  lowerHeatingValueSource: 'water does not burn',
  flashPoint: null,
  curves: {
    density: {
      form: 'kell',
      coefficients: [
        999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12, 16.87985e-3,
      ],
      criticalTemperature,
      valid: { from: 253.15, to: 373.15 },
      worstError: 1e-4,
      source: 'Kell, J. Chem. Eng. Data 20 (1975) 97; against IAPWS-IF97 from 0 to 60 C',
    },
    latentHeat: {
      form: 'watson',
      coefficients: [3388968.769, 0.93985215, -1.19950905, 0.67679431],
      criticalTemperature,
      valid: { from: 253.15, to: 423.15 },
      worstError: 1e-3,
      source: 'fitted to IAPWS-95 from 0 to 150 C within 0.002 %; below 0 C continued smoothly',
    },
    vapourPressure: {
      form: 'saturation',
      coefficients: [22.064e6, -7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502],
      criticalTemperature,
      valid: { from: 253.15, to: 643.15 },
      worstError: 2e-3,
      source:
        'Wagner and Pruss, J. Phys. Chem. Ref. Data 31 (2002) 387, eq. 2.5; over supercooled water below 0 C',
    },
    liquidHeatCapacity: {
      form: 'polynomial',
      coefficients: [4184.364, -0.7975669, 0.03566286, -0.0004876271, 2.860891e-6],
      criticalTemperature,
      valid: liquid,
      worstError: 1e-2,
      source: 'fitted to IAPWS-95 from 0 to 100 C within 0.03 %; continued below 0 C',
    },
    vapourHeatCapacity: {
      form: 'polynomial',
      coefficients: [1863.373, 0.2053364, 1.887561e-3, -4.628979e-6, 5.278136e-9],
      criticalTemperature,
      valid: { from: 253.15, to: 573.15 },
      worstError: 1e-3,
      source: 'fitted to the ideal-gas part of IAPWS-95 within 0.05 %',
    },
    viscosity: {
      form: 'log-inverse',
      coefficients: [236.24208465259196, -22686.774280661288, -33.664007556384156, 2189387.4210101794],
      criticalTemperature,
      valid: { from: 253.15, to: 353.15 },
      worstError: 5e-3,
      source:
        'fitted to the IAPWS viscosity formulation of 2008 from 0 to 80 C within 0.2 %, level of the CRC Handbook at 20 C; below 0 C continued, as a part of a mix',
    },
  },
};
