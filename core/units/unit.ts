/**
 * The one place where a conversion factor stands. SI inside the program: Pa, K, m, kg, s, m^3/s, W, N m, rad,
 * rad/s; shares and lambda as plain numbers. A unit is affine: si = value * factor + offset.
 *
 * Sources: NIST Special Publication 811 (2008), appendix B, for every factor not exact by definition.
 */
export const kinds = [
  'time',
  'length',
  'speed',
  'acceleration',
  'mass',
  'area',
  'volume',
  'angle',
  'engineSpeed',
  'pressure',
  'temperature',
  'temperatureDifference',
  'power',
  'torque',
  'force',
  'forcePerSpeed',
  'forcePerSpeedSquared',
  'inertia',
  'density',
  'volumeFlow',
  'massFlow',
  'share',
  'lambda',
  'voltage',
  'energyPerMass',
  'massPerEnergy',
  'number',
] as const;
export type Kind = (typeof kinds)[number];

export type Unit = {
  readonly id: string;
  readonly kind: Kind;
  /** As printed beside a number. */
  readonly symbol: string;
  readonly factor: number;
  readonly offset: number;
};

const poundMass = 0.45359237;
const standardGravity = 9.80665;
const inch = 0.0254;
const poundForce = poundMass * standardGravity;
const psi = poundForce / (inch * inch);
const usGallon = 231 * inch ** 3;
const mile = 1609.344;
const foot = 0.3048;

function unit(id: string, kind: Kind, symbol: string, factor: number, offset = 0): Unit {
  return { id, kind, symbol, factor, offset };
}

/** Rows a second of loggers that count their rows and write no time (common practice). */
const rowRates_Hz = [2, 4, 5, 10, 20, 25, 30, 40, 50, 60, 100, 125, 200, 250, 500, 10_000] as const;

/** The time from row to row as a unit of time: a row number in `1/20 s` is the time. Files have it; nobody types it. */
const rowSteps = rowRates_Hz.map((rate) => unit(`1/${rate} s`, 'time', `1/${rate} s`, 1 / rate));

/** Ids of the units of time that a row number counts in. */
export const rowStepIds: readonly string[] = rowSteps.map((u) => u.id);

const list: readonly Unit[] = [
  unit('s', 'time', 's', 1),
  unit('ms', 'time', 'ms', 1e-3),
  unit('us', 'time', 'µs', 1e-6),
  unit('ns', 'time', 'ns', 1e-9),
  unit('min', 'time', 'min', 60),
  unit('h', 'time', 'h', 3600),
  ...rowSteps,
  unit('m', 'length', 'm', 1),
  unit('mm', 'length', 'mm', 1e-3),
  unit('cm', 'length', 'cm', 1e-2),
  unit('km', 'length', 'km', 1e3),
  unit('in', 'length', 'in', inch),
  unit('ft', 'length', 'ft', foot),
  unit('mi', 'length', 'mi', mile),
  unit('um', 'length', 'µm', 1e-6),
  unit('m/s', 'speed', 'm/s', 1),
  unit('km/h', 'speed', 'km/h', 1 / 3.6),
  unit('mph', 'speed', 'mph', mile / 3600),
  unit('kn', 'speed', 'kn', 1852 / 3600),
  unit('m/s2', 'acceleration', 'm/s²', 1),
  unit('g0', 'acceleration', 'g', standardGravity),
  unit('kg', 'mass', 'kg', 1),
  unit('g', 'mass', 'g', 1e-3),
  unit('lb', 'mass', 'lb', poundMass),
  unit('m2', 'area', 'm²', 1),
  unit('ft2', 'area', 'ft²', foot * foot),
  unit('m3', 'volume', 'm³', 1),
  unit('L', 'volume', 'L', 1e-3),
  unit('mL', 'volume', 'mL', 1e-6),
  unit('cm3', 'volume', 'cm³', 1e-6),
  unit('in3', 'volume', 'in³', inch ** 3),
  unit('gal', 'volume', 'US gal', usGallon),
  unit('fl oz', 'volume', 'US fl oz', usGallon / 128),
  unit('rad', 'angle', 'rad', 1),
  unit('deg', 'angle', '°', Math.PI / 180),
  unit('rad/s', 'engineSpeed', 'rad/s', 1),
  unit('rpm', 'engineSpeed', 'rpm', Math.PI / 30),
  unit('rps', 'engineSpeed', '1/s', 2 * Math.PI),
  unit('krpm', 'engineSpeed', '1000 rpm', (1000 * Math.PI) / 30),
  unit('Pa', 'pressure', 'Pa', 1),
  unit('hPa', 'pressure', 'hPa', 100),
  unit('kPa', 'pressure', 'kPa', 1e3),
  unit('MPa', 'pressure', 'MPa', 1e6),
  unit('mbar', 'pressure', 'mbar', 100),
  unit('bar', 'pressure', 'bar', 1e5),
  unit('psi', 'pressure', 'psi', psi),
  unit('inHg', 'pressure', 'inHg', 3386.389),
  unit('mmHg', 'pressure', 'mmHg', 133.322387415),
  unit('atm', 'pressure', 'atm', 101325),
  unit('kgf/cm2', 'pressure', 'kgf/cm²', standardGravity * 1e4),
  unit('K', 'temperature', 'K', 1),
  unit('C', 'temperature', '°C', 1, 273.15),
  unit('F', 'temperature', '°F', 5 / 9, 273.15 - (32 * 5) / 9),
  unit('dK', 'temperatureDifference', 'K', 1),
  unit('dC', 'temperatureDifference', '°C', 1),
  unit('dF', 'temperatureDifference', '°F', 5 / 9),
  unit('W', 'power', 'W', 1),
  unit('kW', 'power', 'kW', 1e3),
  unit('hp', 'power', 'hp', 550 * foot * poundForce),
  unit('PS', 'power', 'PS', 75 * standardGravity),
  unit('Nm', 'torque', 'Nm', 1),
  unit('lb ft', 'torque', 'lb ft', poundForce * foot),
  unit('kgf m', 'torque', 'kgf m', standardGravity),
  unit('N', 'force', 'N', 1),
  unit('lbf', 'force', 'lbf', poundForce),
  unit('N s/m', 'forcePerSpeed', 'N s/m', 1),
  unit('N/(km/h)', 'forcePerSpeed', 'N/(km/h)', 3.6),
  unit('lbf/mph', 'forcePerSpeed', 'lbf/mph', (poundForce * 3600) / mile),
  unit('N s2/m2', 'forcePerSpeedSquared', 'N s²/m²', 1),
  unit('N/(km/h)2', 'forcePerSpeedSquared', 'N/(km/h)²', 3.6 ** 2),
  unit('lbf/mph2', 'forcePerSpeedSquared', 'lbf/mph²', poundForce * (3600 / mile) ** 2),
  unit('kg m2', 'inertia', 'kg m²', 1),
  unit('lb ft2', 'inertia', 'lb ft²', poundMass * foot * foot),
  unit('kg/m3', 'density', 'kg/m³', 1),
  unit('kg/L', 'density', 'kg/L', 1e3),
  unit('lb/ft3', 'density', 'lb/ft³', poundMass / foot ** 3),
  unit('m3/s', 'volumeFlow', 'm³/s', 1),
  unit('mL/min', 'volumeFlow', 'mL/min', 1e-6 / 60),
  unit('cc/min', 'volumeFlow', 'cc/min', 1e-6 / 60),
  unit('L/min', 'volumeFlow', 'L/min', 1e-3 / 60),
  unit('L/h', 'volumeFlow', 'L/h', 1e-3 / 3600),
  unit('gal/h', 'volumeFlow', 'US gal/h', usGallon / 3600),
  unit('kg/s', 'massFlow', 'kg/s', 1),
  unit('g/s', 'massFlow', 'g/s', 1e-3),
  unit('g/min', 'massFlow', 'g/min', 1e-3 / 60),
  unit('kg/h', 'massFlow', 'kg/h', 1 / 3600),
  unit('kg/min', 'massFlow', 'kg/min', 1 / 60),
  unit('lb/min', 'massFlow', 'lb/min', poundMass / 60),
  unit('lb/h', 'massFlow', 'lb/h', poundMass / 3600),
  unit('1', 'share', '', 1),
  unit('%', 'share', '%', 1e-2),
  // The count of a byte, 255 when full.
  unit('1/255', 'share', '/255', 1 / 255),
  unit('lambda', 'lambda', 'λ', 1),
  // A gauge's petrol scale, whatever burns (common practice).
  unit('AFR', 'lambda', 'AFR', 1 / 14.7),
  unit('V', 'voltage', 'V', 1),
  unit('mV', 'voltage', 'mV', 1e-3),
  unit('J/kg', 'energyPerMass', 'J/kg', 1),
  unit('kJ/kg', 'energyPerMass', 'kJ/kg', 1e3),
  unit('MJ/kg', 'energyPerMass', 'MJ/kg', 1e6),
  unit('kg/J', 'massPerEnergy', 'kg/J', 1),
  unit('kg/kWh', 'massPerEnergy', 'kg/kWh', 1 / 3.6e6),
  unit('g/kWh', 'massPerEnergy', 'g/kWh', 1e-3 / 3.6e6),
  unit('lb/hp h', 'massPerEnergy', 'lb/hp h', poundMass / (550 * foot * poundForce * 3600)),
  unit('', 'number', '', 1),
];

export const units: ReadonlyMap<string, Unit> = new Map(list.map((u) => [u.id, u]));

/** The unit of this id; a wrong id is our own mistake and throws. */
export function unitOf(id: string): Unit {
  const found = units.get(id);
  if (!found) throw new Error(`no unit "${id}" in core/units`);
  return found;
}

/** All units of one kind, in the order they are offered. */
export function unitsOfKind(kind: Kind): readonly Unit[] {
  return list.filter((u) => u.kind === kind);
}

/**
 * A number in `id`, as SI.  Check: toSi(14.5038, 'psi') is 100 000 Pa within 1 Pa.
 */
export function toSi(value: number, id: string): number {
  const u = unitOf(id);
  return value * u.factor + u.offset;
}

/** An SI number, in `id`.  Check: fromSi(273.15, 'F') is 32. */
export function fromSi(value: number, id: string): number {
  const u = unitOf(id);
  return (value - u.offset) / u.factor;
}

/** From one unit to another of the same kind; two kinds are our own mistake and throw. */
export function convert(value: number, from: string, to: string): number {
  if (unitOf(from).kind !== unitOf(to).kind)
    throw new Error(`"${from}" and "${to}" measure different things`);
  return fromSi(toSi(value, from), to);
}

/** Celsius to K, the shortest way to write a temperature beside a formula. */
export function celsius(value: number): number {
  return value + 273.15;
}

/** Degrees to rad. */
export function degrees(value: number): number {
  return (value * Math.PI) / 180;
}

/** rpm to rad/s. */
export function rpm(value: number): number {
  return (value * Math.PI) / 30;
}
