/** F = a + b v + c v^2 with v in m/s. */
export type Coefficients = { readonly a: number; readonly b: number; readonly c: number };

/**
 * Time to roll from one speed down to another [s].
 *
 *   t = integral of M dv / (a + b v + c v^2)        Simpson's rule, 2000 parts
 *
 * Check: see fitCoastDown.
 */
export function coastDownTime(load: Coefficients, mass: number, from: number, to: number): number {
  const parts = 2000;
  const h = (from - to) / parts;
  let sum = 0;
  for (let i = 0; i <= parts; i++) {
    const v = to + i * h;
    const weight = i === 0 || i === parts ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight / (load.a + v * (load.b + v * load.c));
  }
  return (mass * sum * h) / 3;
}

/**
 * Coefficients as the US agency publishes them, A in lbf, B in lbf/mph, C in lbf/mph^2, in SI.
 *
 * Source: NIST SP 811 for the units; US EPA, Test Car List Data Files, for the form.
 * Check:  27.02, 0.2873, 0.0122 are 120.19 N, 2.8587 N s/m, 0.27155 N s^2/m^2.
 */
export function coefficientsFromPounds(A_lbf: number, B_lbf_mph: number, C_lbf_mph2: number): Coefficients {
  const pound = 4.4482216152605;
  const mph = 0.44704;
  return { a: A_lbf * pound, b: (B_lbf_mph * pound) / mph, c: (C_lbf_mph2 * pound) / mph ** 2 };
}
