import { type Mix, mixDensity, mixLatentHeat } from '../fluids/index.ts';
import { type Note, ok, type Result } from '../result/index.ts';
import { celsius, type Explanation } from '../units/index.ts';
import { airDensity, ambientAir, type ChargeAir, type PartsPerAir } from './charge-air.ts';
import { compress, explainCompressor } from './compressor.ts';
import { cool, explainCooler } from './cooler.ts';
import { stirringOnTheWay } from './drop-slip.ts';
import { dropLifetime, evaporationConstant, residenceTime } from './droplet.ts';
import { evaporate, type Liquid, massOf, noLiquid } from './evaporation.ts';
import { evaporatedOfSpray, practiceDropDiameter } from './spray-cloud.ts';

export const sprayPlaces = [
  'before-compressor',
  'before-cooler',
  'after-cooler',
  'manifold',
  'port',
] as const;
export type SprayPlace = (typeof sprayPlaces)[number];

export const stations = ['ambient', 'compressor', 'cooler', 'spray', 'port'] as const;
export type Station = (typeof stations)[number];

/** The charge at one place of its way, in the order it gets there. */
export type ChargeState = {
  readonly station: Station;
  readonly air: ChargeAir;
  readonly liquid: Liquid;
  /** Dry air in a cubic metre [kg/m^3]. */
  readonly density: number;
  /** Of all fluid sprayed, as vapour here; 0 where none is. */
  readonly evaporatedShare: number;
};

export type SprayInCharge = {
  readonly mix: Mix;
  /** Mass of fluid per mass of dry air. */
  readonly fluidOverAir: number;
  /** Of the fluid [K]. */
  readonly temperature: number;
  readonly place: SprayPlace;
  /** Sauter mean [m]; null for practice. */
  readonly dropDiameter: number | null;
  /** From nozzle to valve; null for practice by place. */
  readonly way: { readonly length: number; readonly bore: number } | null;
};

/** All that the way from ambient to port depends on, SI. */
export type ChargePath = {
  readonly ambient: {
    readonly pressure: number;
    readonly temperature: number;
    readonly relativeHumidity: number;
  };
  /** Absolute, behind compressor and cooler [Pa]. */
  readonly manifoldPressure: number;
  /** Null where nothing compresses. */
  readonly compressor: { readonly efficiency: number } | null;
  /** Null where nothing cools. `coolant` null is ambient. */
  readonly cooler: {
    readonly effectiveness: number;
    readonly coolant: number | null;
    readonly loss: number;
  } | null;
  readonly spray: SprayInCharge | null;
  /** Dry air [kg/s]: sets the time that drops have. */
  readonly airFlow: number;
};

export type ChargeAlong = {
  readonly states: readonly ChargeState[];
  /** The last of them. */
  readonly port: ChargeState;
  /** Of the spray; null without one. `lifetime` of the mean drop, infinite in full air [s]. */
  readonly drops: {
    readonly residence: number;
    readonly lifetime: number;
    /** How much faster they go for overtaking the air. */
    readonly stirring: number;
    /** Share of the fluid that has time to evaporate before the valve. */
    readonly takingPart: number;
  } | null;
  readonly notes: readonly Note[];
  readonly explanations: readonly Explanation[];
};

/** Ways from nozzle to valve [m] and bore, where nobody measured them (common practice). */
const practiceWay: { readonly [P in SprayPlace]: number } = {
  'before-compressor': 2.5,
  'before-cooler': 2.0,
  'after-cooler': 0.7,
  manifold: 0.3,
  port: 0.1,
};
const practiceBore = 0.06;

function stateOf(station: Station, air: ChargeAir, liquid: Liquid, sprayed: number): ChargeState {
  const share = sprayed > 0 ? Math.min(1, Math.max(0, 1 - massOf(liquid.parts) / sprayed)) : 0;
  return { station, air, liquid, density: airDensity(air), evaporatedShare: share };
}

/**
 * Time that drops have against time that they need.
 *
 * The charge cools as they evaporate, so the driving difference is that of the middle between before and after:
 * three rounds settle it within a hundredth.
 */
function dropsAt(
  air: ChargeAir,
  spray: SprayInCharge,
  airFlow: number,
): Result<NonNullable<ChargeAlong['drops']>> {
  const way = spray.way ?? { length: practiceWay[spray.place], bore: practiceBore };
  const residence = residenceTime({ ...way, density: airDensity(air), massFlow: airFlow });
  const density = mixDensity(spray.mix, Math.min(celsius(60), spray.temperature));
  if (!density.ok) return density;
  const parts = partsOf(spray.mix, spray.fluidOverAir);
  // A bath of fluid takes the air to where a drop's surface stays.
  const bath: Liquid = { parts: partsOf(spray.mix, 0.5), temperature: spray.temperature };
  let surface = evaporate(air, bath);
  if (surface.ok) surface = evaporate(air, { ...bath, temperature: surface.value.air.temperature });
  if (!surface.ok) return surface;
  const wet = surface.value.air.temperature;
  const latentHeat = mixLatentHeat(spray.mix, wet);
  if (!latentHeat.ok) return latentHeat;
  const diameter = spray.dropDiameter ?? practiceDropDiameter;
  const stirring = stirringOnTheWay({
    diameter,
    liquidDensity: density.value,
    pressure: air.pressure,
    temperature: air.temperature,
    time: residence,
  });
  let end = air.temperature;
  let takingPart = 0;
  let lifetime = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 3; round++) {
    const constant = evaporationConstant({
      air: (air.temperature + end) / 2,
      surface: wet,
      latentHeat: latentHeat.value,
      density: density.value,
      stirring,
    });
    lifetime = dropLifetime(diameter, constant);
    takingPart = evaporatedOfSpray(residence, diameter, constant);
    const after = evaporate(air, { parts, temperature: spray.temperature }, takingPart);
    if (!after.ok) return after;
    end = Math.max(wet, after.value.air.temperature);
  }
  return ok({ residence, lifetime, stirring, takingPart });
}

export function partsOf(mix: Mix, mass: number): PartsPerAir {
  const { water, methanol, ethanol } = mix.massShares;
  return { water: water * mass, methanol: methanol * mass, ethanol: ethanol * mass };
}

/**
 * The charge on its way: ambient, compressor, cooler, spray, port; the spray where it sits.
 *
 * @returns  every station in the order of the way, and what is worth saying
 *
 * Drops evaporate as far as their time and the air's room for vapour allow, before and behind everything they
 * pass. What is left at the port is still liquid there: it evaporates in the cylinder or wets the wall.
 *
 * Valid:  steady flow; a charge of 50 to 400 kPa and -20 to 200 C before the spray; walls give no heat.
 * Errors: those of ambientAir, compressorOutlet, cool and evaporate.
 * Source: compressor.ts, cooler.ts, evaporation.ts, droplet.ts.
 */
export function chargeAlong(path: ChargePath): Result<ChargeAlong> {
  const ambient = ambientAir(path.ambient);
  if (!ambient.ok) return ambient;
  const { spray } = path;
  const sprayed = spray && spray.fluidOverAir > 0 ? spray.fluidOverAir : 0;
  const states: ChargeState[] = [stateOf('ambient', ambient.value, noLiquid, sprayed)];
  const notes: Note[] = [];
  const explanations: Explanation[] = [];
  let air = ambient.value;
  let liquid = noLiquid;
  let drops: ChargeAlong['drops'] = null;
  let isFull = false;

  const inject = (): Result<null> => {
    if (!spray || sprayed === 0) return ok(null);
    const found = dropsAt(air, spray, path.airFlow);
    if (!found.ok) return found;
    drops = found.value;
    liquid = { parts: partsOf(spray.mix, sprayed), temperature: spray.temperature };
    states.push(stateOf('spray', air, liquid, sprayed));
    return ok(null);
  };
  /** Of what was sprayed only what has time takes part, less what has done so already. */
  const settle = (): Result<null> => {
    if (!drops) return ok(null);
    const gone = 1 - massOf(liquid.parts) / sprayed;
    const share = gone < 1 ? Math.max(0, (drops.takingPart - gone) / (1 - gone)) : 0;
    const after = evaporate(air, liquid, share);
    if (!after.ok) return after;
    ({ air, liquid } = after.value);
    isFull = after.value.isFull;
    return ok(null);
  };

  if (spray?.place === 'before-compressor') {
    const placed = inject();
    if (!placed.ok) return placed;
    const settled = settle();
    if (!settled.ok) return settled;
  }
  const loss = path.cooler?.loss ?? 0;
  if (path.compressor) {
    const before = air;
    const after = compress(air, path.manifoldPressure + loss, path.compressor.efficiency);
    if (!after.ok) return after;
    air = after.value;
    explanations.push(explainCompressor(before, air, path.compressor.efficiency));
    const settled = settle();
    if (!settled.ok) return settled;
    states.push(stateOf('compressor', air, liquid, sprayed));
  } else air = { ...air, pressure: path.manifoldPressure + loss };
  if (spray?.place === 'before-cooler') {
    const placed = inject();
    if (!placed.ok) return placed;
    const settled = settle();
    if (!settled.ok) return settled;
  }
  if (path.cooler) {
    const coolant = path.cooler.coolant ?? path.ambient.temperature;
    const before = air;
    const after = cool(air, { ...path.cooler, coolant });
    if (!after.ok) return after;
    air = after.value;
    explanations.push(explainCooler(before, coolant, path.cooler.effectiveness));
    const settled = settle();
    if (!settled.ok) return settled;
    states.push(stateOf('cooler', air, liquid, sprayed));
  }
  const nozzle = air;
  if (spray && spray.place !== 'before-compressor' && spray.place !== 'before-cooler') {
    const placed = inject();
    if (!placed.ok) return placed;
  }
  const settled = settle();
  if (!settled.ok) return settled;
  const port = stateOf('port', air, liquid, sprayed);
  states.push(port);
  explanations.push(explainDensity(port));
  if (spray && drops) {
    notes.push(...notesOf(spray, drops, port, isFull));
    explanations.push(...explainSpray(spray, drops, nozzle, port));
  }
  return ok({ states, port, drops, notes, explanations });
}

function notesOf(
  spray: SprayInCharge,
  drops: NonNullable<ChargeAlong['drops']>,
  port: ChargeState,
  isFull: boolean,
): Note[] {
  const notes: Note[] = [];
  if (spray.place === 'before-compressor') notes.push({ code: 'charge/spray-before-compressor', facts: {} });
  if (spray.place === 'before-cooler') notes.push({ code: 'charge/spray-before-cooler', facts: {} });
  if (spray.dropDiameter === null)
    notes.push({ code: 'charge/drop-size-practice', facts: { diameter: practiceDropDiameter } });
  if (spray.way === null) notes.push({ code: 'charge/way-unknown', facts: { residence: drops.residence } });
  if (drops.takingPart < 0.9)
    notes.push({
      code: 'charge/drops-outlive-the-way',
      facts: { lifetime: drops.lifetime, residence: drops.residence, share: drops.takingPart },
    });
  if (isFull)
    notes.push({
      code: 'charge/air-is-full',
      facts: { evaporatedShare: port.evaporatedShare, temperature: port.air.temperature },
    });
  if (massOf(port.liquid.parts) > 0) notes.push({ code: 'charge/sensor-reads-wet', facts: {} });
  return notes;
}

function explainDensity(port: ChargeState): Explanation {
  return {
    id: 'charge/density',
    formula: 'rho = p / (R T (1 / M_a + sum w_i / M_i))',
    tex: String.raw`\rho=\frac{p}{R\,T\,(1/M_a+\sum w_i/M_i)}`,
    inputs: [
      { symbol: 'p', value: port.air.pressure, kind: 'pressure' },
      { symbol: 'T', value: port.air.temperature, kind: 'temperature' },
      { symbol: 'rho', value: port.density, kind: 'density' },
    ],
    source: 'ideal gases; dry air alone, as it alone burns fuel',
    validRange: [{ symbol: 'p', from: 50e3, to: 400e3, kind: 'pressure' }],
  };
}

function explainSpray(
  spray: SprayInCharge,
  drops: NonNullable<ChargeAlong['drops']>,
  nozzle: ChargeAir,
  port: ChargeState,
): Explanation[] {
  return [
    {
      id: 'charge/evaporation',
      formula: '(c_a + sum v c_v)(T1 - T) = sum e h_fg + sum m c_l (T - T_l),   p_i <= x_i p_sat,i(T)',
      tex: String.raw`(c_a+\textstyle\sum v_i c_{v,i})(T_1-T)=\sum e_i h_{fg,i}+\sum m_i c_{l,i}(T-T_l)`,
      inputs: [
        { symbol: 'T1', value: nozzle.temperature, kind: 'temperature' },
        { symbol: 'p', value: nozzle.pressure, kind: 'pressure' },
        { symbol: 'm', value: spray.fluidOverAir, kind: 'share' },
        { symbol: 'T_l', value: spray.temperature, kind: 'temperature' },
        { symbol: 'e / m', value: port.evaporatedShare, kind: 'share' },
      ],
      source:
        'first law, Raoult’s law; adiabatic saturation as in ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 33',
      validRange: [
        { symbol: 'T', from: celsius(-20), to: celsius(110), kind: 'temperature' },
        { symbol: 'p', from: 50e3, to: 400e3, kind: 'pressure' },
      ],
    },
    {
      id: 'charge/drops',
      formula:
        't = d^2 rho c / (8 k ln(1 + B) f),   B = c (T - T_s) / h,   f = mean of 1 + 0.3 Re^(1/2) Pr^(1/3)',
      tex: String.raw`t = \frac{d^2\rho_l c}{8 k \ln(1+B)\,f},\quad f=\overline{1+0.3\,Re^{1/2}Pr^{1/3}}`,
      inputs: [
        { symbol: 'd', value: spray.dropDiameter ?? practiceDropDiameter, kind: 'length' },
        { symbol: 't', value: drops.lifetime, kind: 'time' },
        { symbol: 'f', value: drops.stirring, kind: 'number' },
        { symbol: 'way', value: drops.residence, kind: 'time' },
      ],
      source:
        'd-squared law, Turns, An Introduction to Combustion, ch. 3; slip: Ranz and Marshall (1952), Schiller and Naumann (1933); spread after Rosin and Rammler (from memory)',
      validRange: [{ symbol: 'd', from: 5e-6, to: 300e-6, kind: 'length' }],
    },
  ];
}
