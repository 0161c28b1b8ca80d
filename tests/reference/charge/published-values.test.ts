import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  ambientAir,
  compressorOutlet,
  compressorWork,
  cool,
  dropLifetime,
  evaporate,
  evaporationConstant,
  type PartsPerAir,
} from '../../../core/charge/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { celsius } from '../../../core/units/index.ts';
import { type CheckValue, checkValue, checkValuesWhere } from '../../support/check-values.ts';
import { expectKnownDeviation } from '../../support/known-deviation.ts';
import { inputNumber, itAgrees } from '../../support/published.ts';

const water = (mass: number): PartsPerAir => ({ water: mass, methanol: 0, ethanol: 0 });
const startsWith = (prefix: string, atLeast = 1) =>
  checkValuesWhere((v) => v.id.startsWith(prefix) && v.topic === 'charge', atLeast);

/** Air over more water than it takes, the water fed at the temperature it ends at, as the definition asks. */
function saturated(of: { inlet_C: number; humidityRatio: number; pressure: number }) {
  const air = { pressure: of.pressure, temperature: celsius(of.inlet_C), vapour: water(of.humidityRatio) };
  let feed = air.temperature;
  let end = air;
  for (let i = 0; i < 30; i++) {
    end = unwrap(evaporate(air, { parts: water(1), temperature: feed })).air as typeof air;
    feed = end.temperature;
  }
  return { final_C: end.temperature - 273.15, humidityRatio: end.vapour.water };
}

describe('compressor', () => {
  for (const { id } of ['compressor-1.8', 'compressor-2.0', 'compressor-2.5'].map((id) => ({ id })))
    itAgrees(id, (v) =>
      unwrap(
        compressorOutlet({
          inletTemperature: inputNumber(v, 'inlet_K'),
          inletPressure: 1e5,
          outletPressure: 1e5 * inputNumber(v, 'pressure_ratio'),
          efficiency: inputNumber(v, 'isentropic_efficiency'),
          exponent: inputNumber(v, 'kappa'),
        }),
      ),
    );

  itAgrees(
    'compressor-gupta-15.6',
    (v) =>
      unwrap(
        compressorOutlet({
          inletTemperature: inputNumber(v, 'inlet_K'),
          inletPressure: 1e5 * inputNumber(v, 'inlet_bar'),
          outletPressure: 1e5 * inputNumber(v, 'outlet_bar'),
          efficiency: inputNumber(v, 'isentropic_efficiency'),
          exponent: 1 / (1 - inputNumber(v, 'exponent')),
        }),
        // The book converts with 273.
      ) - 273,
  );

  itAgrees('aftercooler-gupta-15.5', (v) => {
    const swept = ((inputNumber(v, 'swept_L') / 1e3) * inputNumber(v, 'rpm')) / 2 / 60;
    const flow = (1e5 * swept * inputNumber(v, 'volumetric_efficiency')) / (287 * 290);
    const outlet = unwrap(
      compressorOutlet({
        inletTemperature: 290,
        inletPressure: 1e5,
        outletPressure: 1e5 * inputNumber(v, 'outlet_bar'),
        efficiency: inputNumber(v, 'isentropic_efficiency'),
      }),
    );
    const cp = inputNumber(v, 'cp') * 1e3;
    return {
      heat_kW: (flow * compressorWork(cp, inputNumber(v, 'after_cooler_K'), outlet)) / 1e3,
      power_kW: (flow * compressorWork(cp, 290, outlet)) / inputNumber(v, 'mechanical_efficiency') / 1e3,
    };
  });

  itAgrees('evaporation-before-compressor', (v) => {
    const ratio = inputNumber(v, 'pressure_ratio');
    const efficiency = inputNumber(v, 'isentropic_efficiency');
    const work = (inlet: number, cp: number, exponent: number) => {
      const outlet = unwrap(
        compressorOutlet({
          inletTemperature: inlet,
          inletPressure: 1e5,
          outletPressure: 1e5 * ratio,
          efficiency,
          exponent,
        }),
      );
      return compressorWork(cp, inlet, outlet);
    };
    const inlet = inputNumber(v, 'inlet_K');
    const mixture = 1 + 1 / inputNumber(v, 'air_fuel');
    return {
      work_before_kJ_kg_air:
        mixture *
        work(
          inlet - inputNumber(v, 'evaporation_drop_K'),
          inputNumber(v, 'cp_mixture'),
          inputNumber(v, 'kappa_mixture'),
        ),
      work_after_kJ_kg_air: work(inlet, inputNumber(v, 'cp_air'), inputNumber(v, 'kappa_air')),
    };
  });

  it('power to drive a supercharger: Rajput example 16.1, whose way is not printed beside it', () => {
    const v = checkValue('supercharger-rajput-16.1');
    const fuel = (inputNumber(v, 'bsfc') * inputNumber(v, 'power_kW')) / 3600;
    const mixture = fuel * (1 + inputNumber(v, 'air_fuel'));
    const inlet = inputNumber(v, 'mixture_K');
    const outlet = unwrap(
      compressorOutlet({
        inletTemperature: inlet,
        inletPressure: 1e5,
        outletPressure: 1e5 * inputNumber(v, 'pressure_ratio'),
        efficiency: inputNumber(v, 'isentropic_efficiency'),
      }),
    );
    const power = (mixture * compressorWork(1.005, inlet, outlet)) / inputNumber(v, 'mechanical_efficiency');
    expectKnownDeviation(
      power,
      { expected: Number(v.expected), tolerance: Number(v.tolerance), source: v.source },
      {
        deviation: 17.1,
        because:
          'the stated inputs give 73.5 kW; the printed figure needs the mechanical efficiency twice more and the copy at hand does not say where',
      },
    );
  });
});

describe('cooler', () => {
  itAgrees(
    'cooler-effectiveness',
    (v) =>
      unwrap(
        cool(
          { pressure: 2e5, temperature: celsius(inputNumber(v, 'charge_in_C')), vapour: water(0) },
          {
            effectiveness: inputNumber(v, 'effectiveness'),
            coolant: celsius(inputNumber(v, 'ambient_C')),
            loss: 0,
          },
        ),
      ).temperature - 273.15,
  );
});

describe('evaporation against adiabatic saturation', () => {
  for (const { id } of startsWith('adiabatic-saturation-', 8)) {
    itAgrees(id, (v) => {
      const pressure = 1e3 * inputNumber(v, 'pressure_kPa');
      const inlet_C = inputNumber(v, 'inlet_C');
      const humid = 'relative_humidity' in v.inputs;
      const inlet = humid
        ? unwrap(
            ambientAir({
              pressure,
              temperature: celsius(inlet_C),
              relativeHumidity: inputNumber(v, 'relative_humidity'),
            }),
          ).vapour.water
        : 0;
      const end = saturated({ inlet_C, humidityRatio: inlet, pressure });
      return humid
        ? { inlet_g_kg: inlet * 1e3, final_C: end.final_C, final_g_kg: end.humidityRatio * 1e3 }
        : { final_C: end.final_C, water_g_per_kg_air: end.humidityRatio * 1e3 };
    });
  }

  it('agrees with psychrolib, asked live, over dry to damp air and ambient to boosted pressure', () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    for (const inlet_C of [20, 45, 70, 95])
      for (const relativeHumidity of [0.02, 0.15])
        for (const pressure of [95e3, 150e3, 240e3]) {
          const air = unwrap(ambientAir({ pressure, temperature: celsius(inlet_C), relativeHumidity }));
          const end = saturated({ inlet_C, humidityRatio: air.vapour.water, pressure });
          const wetBulb = psychrolib.GetTWetBulbFromHumRatio(inlet_C, air.vapour.water, pressure);
          // The tolerance of the published points computed with the same library.
          expect(
            Math.abs(end.final_C - wetBulb),
            `${inlet_C} C, ${relativeHumidity}, ${pressure} Pa`,
          ).toBeLessThan(0.15);
        }
  });

  itAgrees('evaporative-cooler-moran-shapiro', (v) => {
    const air = unwrap(
      ambientAir({
        pressure: 1e5 * inputNumber(v, 'pressure_bar'),
        temperature: celsius(inputNumber(v, 'inlet_C')),
        relativeHumidity: inputNumber(v, 'inlet_relative_humidity'),
      }),
    );
    const flow =
      (inputNumber(v, 'flow_m3_min') / 60) *
      (air.pressure / (8.314462618 * air.temperature * (1 / 28.9647e-3 + air.vapour.water / 18.015e-3)));
    // How much water brings the air to the stated exit.
    let [low, high] = [0, 0.05];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      const end = unwrap(
        evaporate(air, { parts: water(middle), temperature: celsius(inputNumber(v, 'water_C')) }),
      );
      if (end.air.temperature > celsius(inputNumber(v, 'exit_C'))) low = middle;
      else high = middle;
    }
    const taken = (low + high) / 2;
    const saturatedExit = unwrap(
      ambientAir({
        pressure: air.pressure,
        temperature: celsius(inputNumber(v, 'exit_C')),
        relativeHumidity: 1,
      }),
    ).vapour.water;
    const exit = air.vapour.water + taken;
    // Vapour pressures, not humidity ratios, make a relative humidity.
    const pressureShare = (w: number) => w / (w + 18.015 / 28.9647);
    return {
      water_kg_h: flow * taken * 3600,
      exit_relative_humidity: pressureShare(exit) / pressureShare(saturatedExit),
    };
  });
});

describe('most that a fluid can cool', () => {
  const drop = (part: keyof PartsPerAir) => (v: CheckValue) => {
    const air = { pressure: 101325, temperature: celsius(125), vapour: water(0) };
    // Fluid fed at 25 C and heat counted at 25 C, as the entry has it: the vapour's own warming is taken off again.
    const end = unwrap(evaporate(air, { parts: { ...water(0), [part]: 1e-6 }, temperature: celsius(25) }));
    const vapourWarming = 1e-6 * { water: 1880, methanol: 1450, ethanol: 1510 }[part] * 100;
    void v;
    return (air.temperature - end.air.temperature - vapourWarming / 1006) * 1e4;
  };
  itAgrees('cooling-bound-water', drop('water'));
  itAgrees('cooling-bound-methanol', drop('methanol'));
  itAgrees('cooling-bound-ethanol', drop('ethanol'));
});

describe('drop lifetime', () => {
  it.each([
    [50, 5],
    [100, 10],
    [100, 20],
    [200, 15],
  ])(
    'water of %s um, %s K above its wet bulb, lives as Amsden gives it within 15 %%',
    (diameter_um, depression) => {
      // t = d^2 / (80 dT), d in um, dT in K, t in s: Amsden (1962), from memory; it prints no precision, 15 % is
      // ours for a rule of one constant.
      const published = diameter_um ** 2 / (80 * depression);
      const constant = evaporationConstant({
        air: celsius(15 + depression),
        surface: celsius(15),
        latentHeat: 2.466e6,
        density: 999,
      });
      const ours = dropLifetime(diameter_um * 1e-6, constant);
      expect(Math.abs(ours / published - 1)).toBeLessThan(0.15);
    },
  );
});
