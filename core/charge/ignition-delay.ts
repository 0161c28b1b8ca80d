import type { Explanation } from '../units/index.ts';

const atmosphere = 101325;

/**
 * Time that unburnt mixture takes to light itself at a constant state [s].
 *
 *   tau / ms = 17.68 (ON / 100)^3.402 p^-1.7 exp(3800 / T)      p in atm, T in K
 *
 * @param pressure     absolute [Pa]
 * @param temperature  [K]
 *
 * Valid:  primary reference fuels of octane 80 to 100, engine pressures, 600 to 1100 K; no term for mixture
 *         strength or burnt gas left in the cylinder. Use it for ratios on one engine only.
 * Source: Douaud and Eyzat, SAE 780080 (1978), constants as at least five public transcriptions give them.
 * Check:  octane 95 at 40 atm and 800 K gives 3.2441 ms.
 */
export function ignitionDelay(octane: number, pressure: number, temperature: number): number {
  return 17.68e-3 * (octane / 100) ** 3.402 * (pressure / atmosphere) ** -1.7 * Math.exp(3800 / temperature);
}

export function explainIgnitionDelay(octane: number, pressure: number, temperature: number): Explanation {
  return {
    id: 'charge/ignition-delay',
    formula: 'tau/ms = 17.68 (ON/100)^3.402 (p/atm)^-1.7 exp(3800 K / T)',
    tex: String.raw`\tau/\mathrm{ms}=17.68\left(\frac{ON}{100}\right)^{3.402}\left(\frac{p}{\mathrm{atm}}\right)^{-1.7}e^{3800\,\mathrm{K}/T}`,
    inputs: [
      { symbol: 'ON', value: octane, kind: 'number' },
      { symbol: 'p', value: pressure, kind: 'pressure' },
      { symbol: 'T', value: temperature, kind: 'temperature' },
    ],
    source: 'Douaud and Eyzat, SAE 780080 (1978)',
    validRange: [{ symbol: 'ON', from: 80, to: 100, kind: 'number' }],
  };
}
