/**
 * Decimals of a unit as a tape, a scale or a gauge shows it and a tuner types it (common practice); 2 where nothing is
 * said.
 */
const decimals: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 1,
  in: 3,
  'km/h': 1,
  mph: 1,
  kg: 0,
  g: 1,
  lb: 0,
  m2: 3,
  L: 2,
  mL: 1,
  cm3: 1,
  'fl oz': 1,
  deg: 1,
  rpm: 0,
  hPa: 0,
  kPa: 1,
  C: 1,
  F: 1,
  K: 1,
  dC: 1,
  dF: 1,
  dK: 1,
  W: 0,
  kW: 1,
  hp: 1,
  PS: 1,
  Nm: 1,
  'lb ft': 1,
  N: 1,
  lbf: 1,
  'kg/m3': 1,
  'kg/L': 4,
  'mL/min': 0,
  'cc/min': 0,
  'L/h': 1,
  'kg/kWh': 3,
  'g/kWh': 0,
  'lb/hp h': 3,
  lambda: 3,
  '%': 1,
};

/** What a person types has no more digits; what a conversion leaves has a tail of them. */
const mostTyped = 8;
/** Digits that a number keeps through a unit and back: it is stored with twelve. */
const kept = 11;
const least = 3;
const most = 4;

const digitsOf = (value: number) => value.toExponential().replace(/e.*|[-.]/g, '').length;

/**
 * A number as it stands in a field: as it was typed, or, where a conversion left a tail of digits, with those that its
 * unit is read to: three or four, and whole ones all.
 *
 * Check: 280.27461 hp with its tail is 280.3, 3.93700787 in is 3.937, 2 866.0060 lb is 2 866, and 18.4375 psi stays.
 */
export function asRead(value: number, unit: string): number {
  const even = Number(value.toPrecision(kept));
  if (even === 0 || !Number.isFinite(even) || digitsOf(even) <= mostTyped) return even;
  const whole = Math.floor(Math.log10(Math.abs(even))) + 1;
  const wanted = whole + (decimals[unit] ?? 2);
  return Number(even.toPrecision(Math.max(whole, Math.min(most, Math.max(least, wanted)))));
}
