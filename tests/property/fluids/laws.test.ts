import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  alcoholIds,
  contraction,
  finishedShares,
  flashPoint,
  freezingPoint,
  latentHeat,
  type Mix,
  mixByFinishedVolume,
  mixByMass,
  mixDensity,
  mixPoured,
  mixViscosity,
  partialPressures,
  petrolBlend,
  pouredShares,
  strengthOf,
  substanceIds,
  substances,
  vapourPressure,
} from '../../../core/fluids/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { celsius } from '../../../core/units/index.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const liquid_C = fc.double({ min: 0, max: 40, noNaN: true });
const alcohol = fc.constantFrom(...alcoholIds);
/** Any mix of the three. */
const anyMix: fc.Arbitrary<Mix> = fc
  .tuple(share, share)
  .map(([a, b]) => unwrap(mixByMass({ methanol: a * b, ethanol: a * (1 - b) })));

it('the laws run over three liquids', () => {
  expect(substanceIds).toHaveLength(3);
});

/** 1/Z - 1 of the saturated vapour at 60 C, from the reference equations of state; smaller when colder. */
const departure = { water: 0.0054, methanol: 0.051, ethanol: 0.0197 };

describe.each(substanceIds)('%s', (id) => {
  it('latent heat is what the slope of vapour pressure asks for (Clausius and Clapeyron, vapour near ideal)', () => {
    for (let t = 278.15; t <= 333.15; t += 5) {
      const slope =
        (Math.log(unwrap(vapourPressure(id, t + 0.5))) - Math.log(unwrap(vapourPressure(id, t - 0.5)))) / 1;
      const fromSlope = (8.314462618 * t * t * slope) / substances[id].molarMass;
      expect(fromSlope / unwrap(latentHeat(id, t))).toBeGreaterThan(0.995);
      expect(fromSlope / unwrap(latentHeat(id, t))).toBeLessThan(
        1 + departure[id] + substances[id].curves.latentHeat.worstError,
      );
    }
  });

  it('it boils where its vapour pressure is one atmosphere', () => {
    const at = substances[id].boilingPoint.temperature;
    expect(unwrap(vapourPressure(id, at)) / 101325).toBeCloseTo(1, 2);
  });

  it('every curve refuses a temperature outside its record and answers at both ends', () => {
    for (const curve of Object.values(substances[id].curves)) {
      expect(curve.source.length).toBeGreaterThan(10);
      expect(curve.worstError).toBeGreaterThan(0);
    }
    const { from, to } = substances[id].curves.latentHeat.valid;
    expect(latentHeat(id, from).ok && latentHeat(id, to).ok).toBe(true);
    expect(latentHeat(id, from - 0.1).ok || latentHeat(id, to + 0.1).ok).toBe(false);
  });
});

describe('mixes', () => {
  it('poured, mass and finished strengths lead back to the same mix', () => {
    fc.assert(
      fc.property(anyMix, (mix) => {
        const poured = unwrap(pouredShares(mix));
        const back = unwrap(mixPoured({ methanol: poured.methanol, ethanol: poured.ethanol }));
        const finished = unwrap(mixByFinishedVolume(unwrap(finishedShares(mix))));
        for (const id of substanceIds) {
          expect(back.massShares[id]).toBeCloseTo(mix.massShares[id], 9);
          expect(finished.massShares[id]).toBeCloseTo(mix.massShares[id], 7);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('volume shrinks on pouring together, by less than 5 %', () => {
    fc.assert(
      fc.property(anyMix, liquid_C, (mix, t) => {
        const lost = unwrap(contraction(mix, celsius(t)));
        return lost > -1e-3 && lost < 0.05;
      }),
    );
  });

  it('more alcohol is lighter, freezes lower and flashes sooner', () => {
    fc.assert(
      fc.property(alcohol, share, share, liquid_C, (id, a, b, t) => {
        const [weak, strong] = [Math.min(a, b), Math.max(a, b)];
        if (strong - weak < 1e-3) return;
        const [less, more] = [unwrap(mixByMass({ [id]: weak })), unwrap(mixByMass({ [id]: strong }))];
        expect(unwrap(mixDensity(more, celsius(t)))).toBeLessThan(unwrap(mixDensity(less, celsius(t))));
        expect(freezingPoint(more).temperature).toBeLessThanOrEqual(freezingPoint(less).temperature);
        const [flashMore, flashLess] = [unwrap(flashPoint(more)), unwrap(flashPoint(less))];
        if (flashLess) expect(flashMore?.temperature).toBeLessThanOrEqual(flashLess.temperature + 1e-6);
      }),
    );
  });

  it('a warmer mix is lighter from 10 C on and thinner everywhere, and gives off more vapour', () => {
    fc.assert(
      fc.property(anyMix, fc.double({ min: 10, max: 55, noNaN: true }), (mix, t) => {
        expect(unwrap(mixDensity(mix, celsius(t + 4)))).toBeLessThan(unwrap(mixDensity(mix, celsius(t))));
        expect(unwrap(mixViscosity(mix, celsius(t + 4)))).toBeLessThan(unwrap(mixViscosity(mix, celsius(t))));
        const [cool, warm] = [t, t + 4].map((c) => unwrap(partialPressures(mix, celsius(c))));
        for (const id of substanceIds)
          if (mix.massShares[id] > 1e-6) expect(warm?.[id]).toBeGreaterThan(cool?.[id] ?? 0);
      }),
    );
  });

  it('a hydrometer that floats in a mix reads its strength back, warm or cold', () => {
    fc.assert(
      fc.property(alcohol, fc.double({ min: 0.02, max: 0.98, noNaN: true }), liquid_C, (id, w, t) => {
        const density = unwrap(mixDensity(unwrap(mixByMass({ [id]: w })), celsius(t)));
        const reading = density * (1 + 25e-6 * (t - 20));
        const found = unwrap(strengthOf(id, { scale: 'density', value: reading }, celsius(t)));
        expect(found.mix.massShares[id]).toBeCloseTo(w, 5);
        expect(found.massShareHalf).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });
});

it('more ethanol in the petrol needs less air and brings less heat', () => {
  fc.assert(
    fc.property(share, share, (a, b) => {
      const [less, more] = [unwrap(petrolBlend(Math.min(a, b))), unwrap(petrolBlend(Math.max(a, b)))];
      return (
        more.stoichiometricAirFuel <= less.stoichiometricAirFuel + 1e-12 &&
        more.lowerHeatingValue <= less.lowerHeatingValue + 1e-6
      );
    }),
  );
});
