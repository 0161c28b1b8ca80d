import type { Matrix } from '../smoothing/normal-equations.ts';
import type { SpeedSignal } from '../speed/speed-signal.ts';

/** A car that rolls in neutral, and which way: 1 out, -1 back. */
export type Roll = SpeedSignal & { readonly way: 1 | -1 };

/**
 * Normal equations at parameters p, of which the first `shared` are common to all rolls; of each roll the residuals and
 * what its speed changes by each parameter, sample by sample.
 */
export function sumsOf(rolls: readonly Roll[], p: readonly number[], shared: number, mass: number) {
  const size = shared + rolls.length;
  const normal: Matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  const residuals: Float64Array[] = [];
  const changes: Float64Array[] = [];
  let squares = 0;
  rolls.forEach((roll, k) => {
    // v, then dv by each shared parameter, then dv/dv0.
    let state = [p[shared + k] as number, ...new Array<number>(shared).fill(0), 1];
    const at = [...Array(shared).keys(), shared + k];
    const own = new Float64Array(roll.time.length);
    const change = new Float64Array(roll.time.length * (shared + 1));
    residuals.push(own);
    changes.push(change);
    for (let i = 0; i < roll.time.length; i++) {
      if (i > 0)
        state = advance(
          state,
          p,
          shared,
          roll.way,
          mass,
          (roll.time[i] as number) - (roll.time[i - 1] as number),
        );
      const r = (roll.value[i] as number) - (state[0] as number);
      own[i] = r;
      squares += r * r;
      for (let x = 0; x <= shared; x++) {
        const g = state[x + 1] as number;
        change[i * (shared + 1) + x] = g;
        right[at[x] as number] = (right[at[x] as number] as number) + g * r;
        for (let y = 0; y <= shared; y++) {
          const cell = (at[x] as number) * size + (at[y] as number);
          normal[cell] = (normal[cell] as number) + g * (state[y + 1] as number);
        }
      }
    }
  });
  return { normal, right, squares, residuals, changes };
}

/** Fourth-order Runge-Kutta over dt in steps of 0.25 s or less. */
function advance(
  state: readonly number[],
  p: readonly number[],
  shared: number,
  way: 1 | -1,
  mass: number,
  dt: number,
): number[] {
  const [level, perSpeed, c] = p as [number, number, number];
  const isBothWays = shared > 3;
  const a = isBothWays ? level + way * (p[3] as number) : level;
  const b = isBothWays ? perSpeed + way * (p[4] as number) : perSpeed;
  const slope = (s: readonly number[]): number[] => {
    const v = s[0] as number;
    const gradient = -(b + 2 * c * v) / mass;
    const drives = [1, v, v * v, way, way * v];
    const out = [-(a + v * (b + v * c)) / mass];
    for (let i = 0; i < shared; i++) out.push(gradient * (s[i + 1] as number) - (drives[i] as number) / mass);
    out.push(gradient * (s[shared + 1] as number));
    return out;
  };
  const moved = (s: readonly number[], k: readonly number[], h: number) =>
    s.map((x, i) => x + h * (k[i] as number));
  const count = Math.max(1, Math.ceil(dt / 0.25));
  const h = dt / count;
  let s = [...state];
  for (let n = 0; n < count; n++) {
    const k1 = slope(s);
    const k2 = slope(moved(s, k1, h / 2));
    const k3 = slope(moved(s, k2, h / 2));
    const k4 = slope(moved(s, k3, h));
    s = s.map(
      (x, i) =>
        x + (h / 6) * ((k1[i] as number) + 2 * (k2[i] as number) + 2 * (k3[i] as number) + (k4[i] as number)),
    );
  }
  return s;
}
