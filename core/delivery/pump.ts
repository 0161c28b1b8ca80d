import { fail, ok, type Problem, type Result } from '../result/index.ts';

/** A pump at full speed: rise over the tank's pressure against flow, flow rising, rise falling. */
export type PumpCurve = {
  /** [m^3/s] */
  readonly flow: readonly number[];
  /** Outlet minus tank [Pa]. */
  readonly rise: readonly number[];
};

export type Pump = {
  readonly curve: PumpCurve;
  /** Most that a bypass or regulator lets it reach, over `reference` [Pa]; null where nothing limits it. */
  readonly setPressure: number | null;
  readonly reference: 'ambient' | 'manifold';
};

/**
 * A pump from measured points, any order, [Pa] over the tank and [m^3/s].
 *
 * Errors: delivery/pump-unknown for fewer than two points, delivery/pump-number-negative,
 *         delivery/pump-curve-rises where more pressure brings more flow.
 */
export function pumpFromPoints(
  points: readonly { readonly rise: number; readonly flow: number }[],
): Result<PumpCurve> {
  const problems: Problem[] = [];
  for (const p of points)
    if (!(p.rise >= 0 && p.flow >= 0))
      problems.push({ code: 'delivery/pump-number-negative', facts: { pressure: p.rise, flow: p.flow } });
  const sorted = [...points].sort((a, b) => a.rise - b.rise);
  for (const [i, p] of sorted.entries()) {
    const previous = sorted[i - 1];
    if (previous && p.flow >= previous.flow)
      problems.push({
        code: 'delivery/pump-curve-rises',
        facts: { pressure: p.rise, flow: p.flow, previousFlow: previous.flow },
      });
  }
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);
  if (sorted.length < 2) return fail({ code: 'delivery/pump-unknown', facts: {} });
  sorted.reverse();
  return ok({ flow: sorted.map((p) => p.flow), rise: sorted.map((p) => p.rise) });
}

/**
 * A pump from two numbers: a straight line from the shut outlet to the open one, as a motor on a constant
 * voltage behaves (common practice).
 */
export function pumpFromTwo(shutRise: number, openFlow: number): Result<PumpCurve> {
  return pumpFromPoints([
    { rise: 0, flow: openFlow },
    { rise: shutRise, flow: 0 },
  ]);
}

/**
 * Rise over the tank that the pump holds at a flow [Pa]; negative beyond its open flow.
 *
 *   dp(q, s) = s dp(q / s)        s speed, 0 to 1
 *
 * Both axes shrink with speed: flow because each turn moves one volume, pressure because the motor's torque at
 * standstill follows its voltage. For a straight line that is exactly q = q0 (s - p / p0).
 *
 * Valid:  displacement pump on a direct-current motor (common practice); beyond the points the last slope is kept.
 * Check:  1000 mL/min open, 1 MPa shut: 500 kPa at 500 mL/min, 250 kPa at 250 mL/min and half speed.
 */
export function pumpRise(curve: PumpCurve, flow: number, speed = 1): number {
  if (speed <= 0) return -Infinity;
  const q = flow / speed;
  const n = curve.flow.length;
  let i = 1;
  while (i < n - 1 && q > (curve.flow[i] ?? 0)) i++;
  const [q0 = 0, q1 = 0] = [curve.flow[i - 1], curve.flow[i]];
  const [p0 = 0, p1 = 0] = [curve.rise[i - 1], curve.rise[i]];
  return speed * (p0 + ((p1 - p0) * (q - q0)) / (q1 - q0));
}

/** Absolute pressure behind pump and regulator [Pa]. */
export function outletPressure(
  pump: Pump,
  flow: number,
  at: { readonly ambientPressure: number; readonly manifoldPressure: number; readonly speed?: number },
): number {
  const free = at.ambientPressure + pumpRise(pump.curve, flow, at.speed ?? 1);
  if (pump.setPressure === null) return free;
  const base = pump.reference === 'manifold' ? at.manifoldPressure : at.ambientPressure;
  return Math.min(free, base + pump.setPressure);
}
