import { z } from 'zod';
import { type Note, NoteJsonSchema, ok, type Result } from '../result/index.ts';
import { celsius, type Explanation, tidy } from '../units/index.ts';
import { type FlashPoint, flashPoint } from './flash-point.ts';
import { type FreezingPoint, freezingPoint } from './freezing-point.ts';
import { hazards } from './hazards.ts';
import { type HydrometerReading, type Strength, strengthOf } from './hydrometer.ts';
import { type Mix, mixByMass, mixPoured, pouredShares } from './mix.ts';
import { contraction, finishedShares, mixByFinishedVolume, mixDensity } from './mix-density.ts';
import { mixHeatCapacity, mixLatentHeat, mixLowerHeatingValue } from './mix-heat.ts';
import { partialPressures } from './mix-vapour-pressure.ts';
import { mixViscosity } from './mix-viscosity.ts';
import { airDemand } from './stoichiometry.ts';
import { type AlcoholId, alcoholIds, type SubstanceId } from './substance.ts';

/** How a person knows a mix: by what was poured, by its label, by weight. */
export const mixBases = ['poured', 'finished', 'mass'] as const;

/** A fluid as asked for from outside; water is the rest. A hydrometer reading beats the shares. */
export const FluidInputSchema = z.looseObject({
  by: z.enum(mixBases).default('poured'),
  methanol_percent: z.number().default(0),
  ethanol_percent: z.number().default(0),
  /** Of the fluid: every property is given at it. */
  temperature_C: z.number().default(20),
  /** Where it is kept, for fire and frost; the fluid's own temperature unless told. */
  ambient_C: z.number().nullable().default(null),
  hydrometer: z
    .looseObject({
      alcohol: z.enum(alcoholIds),
      scale: z.enum(['density', 'ethanol-by-volume']),
      /** kg/m3, or % by volume. */
      value: z.number(),
    })
    .nullable()
    .default(null),
});
export type FluidInput = z.input<typeof FluidInputSchema>;

/** Everything worth knowing of a mix at one temperature, SI. */
export type FluidSheet = {
  readonly mix: Mix;
  readonly temperature: number;
  readonly ambient: number;
  readonly poured: { readonly [S in SubstanceId]: number };
  readonly finished: { readonly [A in AlcoholId]: number };
  readonly contraction: number;
  readonly density: number;
  readonly heatCapacity: number;
  readonly latentHeat: number;
  readonly partialPressures: { readonly [S in SubstanceId]: number };
  readonly viscosity: number;
  readonly freezing: FreezingPoint;
  /** Null where nothing burns, or nothing flashes below 100 C. */
  readonly flash: FlashPoint | null;
  /** By the cautious flash point. False is an estimate's word, never a promise. */
  readonly canBurnAtAmbient: boolean;
  /** kg air per kg of the whole mix. */
  readonly airDemand: number;
  readonly lowerHeatingValue: number;
  /** Where a hydrometer was read. */
  readonly strength: Strength | null;
  readonly notes: readonly Note[];
  readonly explanations: readonly Explanation[];
};

function mixOf(input: z.output<typeof FluidInputSchema>, temperature: number): Result<Mix> {
  const shares = { methanol: input.methanol_percent / 100, ethanol: input.ethanol_percent / 100 };
  if (input.by === 'mass') return mixByMass(shares);
  return input.by === 'finished' ? mixByFinishedVolume(shares) : mixPoured(shares, temperature);
}

function cautions(
  mix: Mix,
  ambient: number,
  poured: number,
  sheet: Pick<FluidSheet, 'flash' | 'freezing' | 'contraction'>,
): Note[] {
  const notes: Note[] = [];
  const { methanol, ethanol } = mix.massShares;
  const { flash, freezing } = sheet;
  if (methanol + ethanol === 0) notes.push({ code: 'fluids/does-not-burn', facts: {} });
  else if (flash !== null)
    notes.push({
      code: ambient >= flash.cautious ? 'fluids/burns-at-ambient' : 'fluids/burns-when-warmer',
      facts: { ambient, flashPoint: flash.cautious },
    });
  if (poured > 0.5 + 1e-9) notes.push({ code: 'fluids/strong-mix', facts: { share: poured } });
  if (methanol > 0) {
    notes.push({
      code: 'fluids/methanol-is-toxic',
      facts: { exposureLimit_ppm: hazards.methanol.permissibleExposure_ppm },
    });
    notes.push({ code: 'fluids/flame-unseen', facts: {} });
  }
  if (ambient <= freezing.temperature && !freezing.isUpperLimit)
    notes.push({
      code: 'fluids/freezes-at-ambient',
      facts: { ambient, freezingPoint: freezing.temperature },
    });
  if (methanol > 0 && ethanol > 0)
    notes.push({ code: 'fluids/three-parts-estimated', facts: { alcohols: alcoholIds } });
  // 0.5 %: what a measuring jug shows.
  if (sheet.contraction > 0.005)
    notes.push({ code: 'fluids/contraction', facts: { share: sheet.contraction } });
  return notes;
}

/**
 * All properties of a mix.
 *
 * Errors: those of the mix and of every property, first come.
 * Check:  half and half methanol poured at 20 C: 926.9 kg/m^3, 44.2 % by mass, 3.46 % lost.
 */
export function fluidOf(given: FluidInput): Result<FluidSheet> {
  const input = FluidInputSchema.parse(given);
  const temperature = celsius(input.temperature_C);
  const ambient = input.ambient_C === null ? temperature : celsius(input.ambient_C);
  let strength: Strength | null = null;
  if (input.hydrometer) {
    const { alcohol, scale, value } = input.hydrometer;
    const reading: HydrometerReading = { scale, value: scale === 'density' ? value : value / 100 };
    const found = strengthOf(alcohol, reading, temperature);
    if (!found.ok) return found;
    strength = found.value;
  }
  const made = strength ? ok(strength.mix) : mixOf(input, temperature);
  if (!made.ok) return made;
  const mix = made.value;
  const density = mixDensity(mix, temperature);
  if (!density.ok) return density;
  const lost = contraction(mix, temperature);
  if (!lost.ok) return lost;
  const poured = pouredShares(mix, temperature);
  if (!poured.ok) return poured;
  const finished = finishedShares(mix);
  if (!finished.ok) return finished;
  const heatCapacity = mixHeatCapacity(mix, temperature);
  if (!heatCapacity.ok) return heatCapacity;
  const latent = mixLatentHeat(mix, temperature);
  if (!latent.ok) return latent;
  const pressures = partialPressures(mix, temperature);
  if (!pressures.ok) return pressures;
  const viscosity = mixViscosity(mix, temperature);
  if (!viscosity.ok) return viscosity;
  const flash = flashPoint(mix);
  if (!flash.ok) return flash;
  const freezing = freezingPoint(mix);
  const facts = { flash: flash.value, freezing, contraction: lost.value };
  return ok({
    mix,
    temperature,
    ambient,
    poured: poured.value,
    finished: finished.value,
    contraction: lost.value,
    density: density.value,
    heatCapacity: heatCapacity.value,
    latentHeat: latent.value,
    partialPressures: pressures.value,
    viscosity: viscosity.value,
    freezing,
    flash: flash.value,
    canBurnAtAmbient: flash.value !== null && ambient >= flash.value.cautious,
    airDemand: airDemand({ methanol: mix.massShares.methanol, ethanol: mix.massShares.ethanol }),
    lowerHeatingValue: mixLowerHeatingValue(mix),
    strength,
    notes: cautions(mix, ambient, poured.value.methanol + poured.value.ethanol, facts),
    explanations: explain(mix, temperature),
  });
}

function explain(mix: Mix, temperature: number): Explanation[] {
  const inputs: Explanation['inputs'] = [
    { symbol: 'w_methanol', value: mix.massShares.methanol, kind: 'share' },
    { symbol: 'w_ethanol', value: mix.massShares.ethanol, kind: 'share' },
    { symbol: 'T', value: temperature, kind: 'temperature' },
  ];
  const range = (from: number, to: number): Explanation['validRange'] => [
    { symbol: 'T', from: celsius(from), to: celsius(to), kind: 'temperature' },
  ];
  return [
    {
      id: 'fluids/density',
      formula: '1/rho = sum w_i/rho_i + v_excess',
      tex: String.raw`\frac1\rho = \sum_i \frac{w_i}{\rho_i} + v^E`,
      inputs,
      source:
        'OIML R 22:1975 (ethanol-water); CRC Handbook, 102nd ed., and Melinder (methanol-water); Kell 1975 (water)',
      validRange: range(-20, 60),
    },
    {
      id: 'fluids/latent-heat',
      formula: 'h = sum w_i h_i(T)',
      tex: String.raw`h = \sum_i w_i\,h_i(T)`,
      inputs,
      source: 'IAPWS-95; CRC Handbook and reference equations of state for the alcohols',
      validRange: range(-20, 150),
    },
    {
      id: 'fluids/heat-capacity',
      formula: 'c = sum w_i c_i(T)',
      tex: String.raw`c = \sum_i w_i\,c_i(T)`,
      inputs,
      source: 'IAPWS-95; CRC Handbook and reference equations of state for the alcohols',
      validRange: range(-20, 100),
    },
    {
      id: 'fluids/air-demand',
      formula: 'L = sum w_i L_i, each from its elements',
      tex: String.raw`L = \sum_i w_i\,L_i`,
      inputs: inputs.slice(0, 2),
      source: 'element balance with the composition of dry air, ISO 2533 (from memory)',
      validRange: [],
    },
    {
      id: 'fluids/heating-value',
      formula: 'H = sum w_i H_i',
      tex: String.raw`H = \sum_i w_i\,H_i`,
      inputs: inputs.slice(0, 2),
      source: 'Active Thermochemical Tables 1.112, liquid at 25 C',
      validRange: [],
    },
    {
      id: 'fluids/vapour-pressure',
      formula: 'p_i = x_i g_i p_sat,i(T)',
      tex: String.raw`p_i = x_i\,\gamma_i\,p_{\mathrm{sat},i}(T)`,
      inputs,
      source: 'Wagner and Pruss 2002; Poling, 5th ed.; van Laar constants from memory',
      validRange: range(-20, 110),
    },
    {
      id: 'fluids/viscosity',
      formula: 'ln mu = sum x_i ln mu_i + x (1 - x) G(x, T)',
      tex: String.raw`\ln\mu = \sum_i x_i\ln\mu_i + x(1-x)\,G(x,T)`,
      inputs,
      source: 'Grunberg and Nissan 1949, fitted to the CRC Handbook, 102nd ed., and Melinder',
      validRange: range(-20, 60),
    },
    {
      id: 'fluids/freezing-point',
      formula: 'table, interpolated',
      inputs: inputs.slice(0, 2),
      source: 'CRC Handbook, 102nd ed., Concentrative Properties of Aqueous Solutions',
      validRange: [{ symbol: 'w', from: 0, to: 0.6, kind: 'share' }],
    },
    {
      id: 'fluids/flash-point',
      formula: 'sum x_i g_i p_i(T) / p_i(T_flash,i) = 1, less its worst error',
      tex: String.raw`\sum_i \frac{x_i\,\gamma_i\,p_i(T)}{p_i(T_{\mathrm{flash},i})} = 1`,
      inputs: inputs.slice(0, 2),
      source: 'Liaw et al. 2002 (from memory); pure flash points IEC 60079-20-1',
      validRange: range(0, 100),
    },
  ];
}

const percent = z.number();
export const FluidJsonSchema = z.object({
  temperature_C: z.number(),
  mass_percent: z.object({ water: percent, methanol: percent, ethanol: percent }),
  poured_percent: z.object({ water: percent, methanol: percent, ethanol: percent }),
  /** Pure alcohol over the finished mix, both at 20 C. */
  finished_percent: z.object({ methanol: percent, ethanol: percent }),
  /** Half width of the mass share that a hydrometer's reading allows. */
  strengthHalf_percent: percent.nullable(),
  contraction_percent: percent,
  density_kg_m3: z.number(),
  heatCapacity_J_kg_K: z.number(),
  latentHeat_kJ_kg: z.number(),
  vapourPressure_kPa: z.object({ water: z.number(), methanol: z.number(), ethanol: z.number() }),
  viscosity_mPa_s: z.number(),
  freezing_C: z.number(),
  /** True where it freezes somewhere below the value. */
  freezingIsUpperLimit: z.boolean(),
  /** The cautious value. */
  flash_C: z.number().nullable(),
  flashEstimate_C: z.number().nullable(),
  canBurnAtAmbient: z.boolean(),
  /** Per mass of the whole mix. */
  airDemand_kg_kg: z.number(),
  lowerHeatingValue_MJ_kg: z.number(),
  notes: z.array(NoteJsonSchema),
});
export type FluidJson = z.infer<typeof FluidJsonSchema>;

const celsiusOf = (temperature: number) => Number((temperature - 273.15).toFixed(2));

/** The sheet for scripts: units in the keys. */
export function fluidJson(sheet: FluidSheet): FluidJson {
  const percents = <K extends string>(shares: { readonly [P in K]: number }) =>
    Object.fromEntries(Object.entries<number>(shares).map(([id, share]) => [id, tidy(100 * share)])) as {
      [P in K]: number;
    };
  const { water, methanol, ethanol } = sheet.partialPressures;
  return {
    temperature_C: celsiusOf(sheet.temperature),
    mass_percent: percents(sheet.mix.massShares),
    poured_percent: percents(sheet.poured),
    finished_percent: percents(sheet.finished),
    strengthHalf_percent: sheet.strength === null ? null : tidy(100 * sheet.strength.massShareHalf),
    contraction_percent: tidy(100 * sheet.contraction),
    density_kg_m3: tidy(sheet.density),
    heatCapacity_J_kg_K: tidy(sheet.heatCapacity),
    latentHeat_kJ_kg: tidy(sheet.latentHeat / 1e3),
    vapourPressure_kPa: {
      water: tidy(water / 1e3),
      methanol: tidy(methanol / 1e3),
      ethanol: tidy(ethanol / 1e3),
    },
    viscosity_mPa_s: tidy(sheet.viscosity * 1e3),
    freezing_C: celsiusOf(sheet.freezing.temperature),
    freezingIsUpperLimit: sheet.freezing.isUpperLimit,
    flash_C: sheet.flash === null ? null : celsiusOf(sheet.flash.cautious),
    flashEstimate_C: sheet.flash === null ? null : celsiusOf(sheet.flash.temperature),
    canBurnAtAmbient: sheet.canBurnAtAmbient,
    airDemand_kg_kg: tidy(sheet.airDemand),
    lowerHeatingValue_MJ_kg: tidy(sheet.lowerHeatingValue / 1e6),
    notes: sheet.notes.map((n) => ({ code: n.code, facts: n.facts as Record<string, unknown> })),
  };
}
