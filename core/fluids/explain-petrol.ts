import type { Explanation } from '../units/index.ts';
import type { PetrolBlend } from './petrol-blend.ts';

/** Where the stoichiometric air/fuel ratio of a pump petrol comes from. */
export function explainPetrol(blend: PetrolBlend, ethanolVolumeShare: number): Explanation {
  return {
    id: 'fluids/petrol-air-fuel',
    formula: 'L = w_petrol L_petrol + w_ethanol L_ethanol, each from its elements',
    tex: String.raw`L = w_\mathrm{petrol}\,L_\mathrm{petrol} + w_\mathrm{ethanol}\,L_\mathrm{ethanol}`,
    inputs: [
      { symbol: 'ethanol by volume', value: ethanolVolumeShare, kind: 'share' },
      { symbol: 'w_ethanol', value: blend.parts.ethanol, kind: 'share' },
    ],
    source: 'element balance; petrol taken as CH1.87, 745 kg/m3: common practice',
    validRange: [],
  };
}
