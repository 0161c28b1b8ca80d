import { z } from 'zod';
import { type Kind, kinds, type Unit, unitOf, unitsOfKind } from './unit.ts';

/**
 * What a quantity is shown as; boost and absolute pressure are chosen apart, as a psi gauge beside kPa is common. A tank
 * and what a pull takes of it are chosen apart from displacement, which is told in litres everywhere (common practice).
 */
export const shownKinds = [...kinds, 'boost', 'fluidPressure', 'tankVolume', 'smallVolume'] as const;
export type ShownKind = (typeof shownKinds)[number];

export type UnitChoice = Readonly<Record<ShownKind, string>> & {
  /** Lambda, or the gauge's own scale of air/fuel ratio (lambda times this number). */
  readonly gaugeScale: number | null;
};

const shared = {
  time: 's',
  acceleration: 'm/s2',
  volume: 'L',
  angle: 'deg',
  engineSpeed: 'rpm',
  density: 'kg/L',
  // Nozzles are rated in it under either system (common practice); US gal/h is offered beside it.
  volumeFlow: 'mL/min',
  share: '%',
  lambda: 'lambda',
  voltage: 'V',
  energyPerMass: 'kJ/kg',
  number: '',
} as const;

export const metricUnits: UnitChoice = {
  ...shared,
  length: 'm',
  speed: 'km/h',
  mass: 'kg',
  area: 'm2',
  pressure: 'kPa',
  boost: 'bar',
  fluidPressure: 'bar',
  tankVolume: 'L',
  smallVolume: 'mL',
  temperature: 'C',
  temperatureDifference: 'dC',
  power: 'kW',
  torque: 'Nm',
  inertia: 'kg m2',
  massFlow: 'g/s',
  force: 'N',
  forcePerSpeed: 'N/(km/h)',
  forcePerSpeedSquared: 'N/(km/h)2',
  massPerEnergy: 'kg/kWh',
  gaugeScale: null,
};

export const imperialUnits: UnitChoice = {
  ...shared,
  length: 'ft',
  speed: 'mph',
  mass: 'lb',
  area: 'ft2',
  pressure: 'psi',
  boost: 'psi',
  fluidPressure: 'psi',
  tankVolume: 'gal',
  smallVolume: 'fl oz',
  temperature: 'F',
  temperatureDifference: 'dF',
  power: 'hp',
  torque: 'lb ft',
  inertia: 'lb ft2',
  // As fuel is reckoned beside lb/hp h (common practice).
  massFlow: 'lb/h',
  force: 'lbf',
  forcePerSpeed: 'lbf/mph',
  forcePerSpeedSquared: 'lbf/mph2',
  massPerEnergy: 'lb/hp h',
  gaugeScale: 14.7,
};

/** What people type and read each quantity in, most usual first; the rest of core/units is for files. */
const offered: { readonly [K in ShownKind]?: readonly string[] } = {
  time: ['s', 'min'],
  length: ['m', 'cm', 'mm', 'in', 'ft'],
  speed: ['km/h', 'mph', 'm/s'],
  mass: ['kg', 'lb'],
  volume: ['L', 'cm3', 'in3'],
  tankVolume: ['L', 'mL', 'gal', 'fl oz'],
  smallVolume: ['mL', 'L', 'fl oz', 'gal'],
  pressure: ['kPa', 'bar', 'psi', 'hPa', 'inHg'],
  boost: ['bar', 'psi', 'kPa'],
  fluidPressure: ['bar', 'psi', 'kPa'],
  temperature: ['C', 'F', 'K'],
  temperatureDifference: ['dC', 'dF', 'dK'],
  power: ['kW', 'hp', 'PS'],
  torque: ['Nm', 'lb ft'],
  force: ['N', 'lbf'],
  angle: ['deg'],
  engineSpeed: ['rpm'],
  density: ['kg/L', 'kg/m3'],
  volumeFlow: ['mL/min', 'L/h', 'gal/h'],
  massFlow: ['g/s', 'g/min', 'kg/h', 'lb/min', 'lb/h'],
  share: ['%'],
  voltage: ['V'],
  massPerEnergy: ['kg/kWh', 'g/kWh', 'lb/hp h'],
  energyPerMass: ['MJ/kg', 'kJ/kg'],
};

/** Units to choose from for a quantity, most usual first. */
export function offeredUnits(shown: ShownKind): readonly Unit[] {
  const ids = offered[shown];
  return ids ? ids.map(unitOf) : unitsOfKind(kindOf(shown));
}

/** The kind of unit that a shown kind is measured in. */
export function kindOf(shown: ShownKind): Kind {
  if (shown === 'tankVolume' || shown === 'smallVolume') return 'volume';
  return shown === 'boost' || shown === 'fluidPressure' ? 'pressure' : shown;
}

/**
 * What a shown pressure counts from: vacuum, or the air outside. Null where it is no pressure. The difference of
 * two pressures counts from neither; it is shown as a span.
 */
export function referenceOf(shown: ShownKind): 'absolute' | 'gauge' | null {
  if (shown === 'pressure') return 'absolute';
  return shown === 'boost' || shown === 'fluidPressure' ? 'gauge' : null;
}

/** What an imperial choice held before these had an imperial unit; `volume` was that of tanks too. */
const imperialBefore: Readonly<Record<string, string>> = { inertia: 'kg m2', massFlow: 'g/s', volume: 'L' };

/**
 * A stored choice with all that is chosen now. One from before tanks were chosen apart that was imperial in all it knew is
 * imperial still; another one gets what it lacks from the system that its forces are in.
 */
function withLaterUnits(stored: unknown): unknown {
  if (typeof stored !== 'object' || stored === null || 'tankVolume' in stored) return stored;
  const known = stored as Readonly<Record<string, unknown>>;
  const { gaugeScale = null, volume = 'L' } = known;
  const isImperial = shownKinds
    .filter((kind) => kind in known)
    .every((kind) => known[kind] === imperialUnits[kind] || known[kind] === imperialBefore[kind]);
  if (isImperial && 'force' in known) return { ...imperialUnits, gaugeScale };
  const isUs = volume === 'gal' || volume === 'fl oz';
  const base = known.force === imperialUnits.force ? imperialUnits : metricUnits;
  return { ...base, ...known, volume: 'L', tankVolume: volume, smallVolume: isUs ? 'fl oz' : 'mL' };
}

export const UnitChoiceSchema: z.ZodType<UnitChoice> = z.preprocess(
  withLaterUnits,
  z
    .strictObject({
      ...(Object.fromEntries(shownKinds.map((k) => [k, z.string()])) as Record<ShownKind, z.ZodString>),
      gaugeScale: z.number().positive().nullable(),
    })
    .refine((choice) =>
      shownKinds.every((k) => unitsOfKind(kindOf(k)).some((u) => u.id === choice[k])),
    ) as unknown as z.ZodType<UnitChoice>,
);

/** The chosen unit of a shown kind. */
export function chosenUnit(choice: UnitChoice, shown: ShownKind) {
  return unitOf(choice[shown]);
}
