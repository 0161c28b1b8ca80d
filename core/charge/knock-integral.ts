import { degrees } from '../units/index.ts';
import { burntShare, type Crank, volumeRatio } from './crank.ts';
import { ignitionDelay } from './ignition-delay.ts';

/** One cylinder at one engine speed, as the knock integral needs it. */
export type KnockState = {
  readonly crank: Crank;
  /** Where the inlet valve has shut, before top dead centre and so below zero [rad]. */
  readonly closing_rad: number;
  /** In the cylinder when it shuts: absolute [Pa], [K]. */
  readonly pressure: number;
  readonly temperature: number;
  readonly engineSpeed_rad_s: number;
  readonly octane: number;
  /** Before top dead centre [rad]; null for a motored compression that ends at top dead centre. */
  readonly spark_rad: number | null;
  /** From spark to all burnt [rad]. */
  readonly burnDuration_rad: number;
  /** Heat set free and kept, over p V at the closing of the valve. */
  readonly heat: number;
  /** Polytropic exponent of the unburnt charge, and of the whole while it burns. */
  readonly exponent: number;
};

/** End gas counts until so much has burnt: what is left then is thin and cool at the wall (common practice). */
const burntAtEnd = 0.9;
/** Compression alone changes slowly and counts little: wide steps there, narrow ones once the flame presses too. */
const stepBefore = degrees(2);
const stepBurning = degrees(1);

/**
 * How far the end gas has come towards lighting itself.
 *
 *   I = integral dt / tau(p, T_u)
 *   d(p V^n) = (n - 1) V^(n - 1) dQ,     T_u = T_0 (p / p_0)^((n - 1) / n)
 *
 * The unburnt part is compressed by piston and flame alike, evenly through the cylinder.
 *
 * @returns  1 is the onset of knock by definition; the number is engine-dependent, so only two of one engine are
 *           ever compared
 *
 * Valid:  spark within 60 degrees before top dead centre; walls give and take no heat beyond the exponent. The steps
 *         leave 0.2 % of the number, nearly the same for two states of one engine.
 * Source: Livengood and Wu, Fifth Symposium on Combustion (1955), p. 347; ignition-delay.ts; crank.ts.
 * Check:  2000 rpm, octane 95, 2 atm, 330 K, ratio 10, motored from -140 degrees: 0.1515.
 */
export function knockIntegral(state: KnockState): number {
  const { crank, exponent: n, spark_rad, engineSpeed_rad_s } = state;
  const from = state.closing_rad;
  // At this share of the duration a Wiebe burn has burnt burntAtEnd.
  const endOfBurn = Math.cbrt(-Math.log(1 - burntAtEnd) / 5);
  const to = spark_rad === null ? 0 : Math.max(0, -spark_rad + endOfBurn * state.burnDuration_rad);
  const startVolume = volumeRatio(crank, from);
  const isentropic = (n - 1) / n;
  let product = 1;
  let burnt = 0;
  let sum = 0;
  // Midpoints: the volume and the pressure of the middle of each step.
  const span = (start: number, end: number, step: number) => {
    const count = Math.ceil((end - start) / step - 1e-9);
    const width = (end - start) / count;
    for (let i = 0; i < count; i++) {
      const angle = start + (i + 0.5) * width;
      const volume = volumeRatio(crank, angle) / startVolume;
      const toTheN = volume ** n;
      if (spark_rad !== null && angle > -spark_rad) {
        const now = burntShare((angle + spark_rad) / state.burnDuration_rad);
        // Between two midpoints half of the step's heat lies before each; volumes there differ by under 1 %.
        product += (n - 1) * (toTheN / volume) * state.heat * (now - burnt);
        burnt = now;
      }
      const ratio = product / toTheN;
      sum +=
        width / ignitionDelay(state.octane, state.pressure * ratio, state.temperature * ratio ** isentropic);
    }
  };
  const spark = spark_rad === null ? to : Math.min(to, Math.max(from, -spark_rad));
  span(from, spark, stepBefore);
  span(spark, to, stepBurning);
  return sum / engineSpeed_rad_s;
}
