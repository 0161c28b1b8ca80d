/** What an invented car of 1450 kg holds against the road: F = a + b v + c v^2 in SI. */
export const rolledTruth = { mass: 1450, a: 170, b: 1.2, c: 0.4 };

/**
 * A log of rolls in neutral, driven up to speed before each, on a slope that pushes with `slopeForce` [N]; each next
 * roll goes the other way.
 */
export function rolledLog({
  rolls = 2,
  slopeForce = 71,
  hasEngineSpeed = true,
}: {
  readonly rolls?: number;
  readonly slopeForce?: number;
  readonly hasEngineSpeed?: boolean;
} = {}): string {
  const { mass, a, b, c } = rolledTruth;
  const rows = [hasEngineSpeed ? 'Time (s),RPM,Speed (km/h)' : 'Time (s),Speed (km/h)'];
  let t = 0;
  const write = (v: number, rpm: number) => {
    t += 0.1;
    const speed = (3.6 * v).toFixed(1);
    rows.push([t.toFixed(1), ...(hasEngineSpeed ? [rpm] : []), speed].join(','));
  };
  for (let n = 0; n < rolls; n++) {
    const way = n % 2 === 0 ? 1 : -1;
    let v = 20;
    for (; v < 36; v += 0.1) write(v, Math.round(80 * v));
    while (v > 3) {
      for (let i = 0; i < 20; i++) v -= ((a + slopeForce * way + b * v + c * v * v) / mass) * 0.005;
      write(v, 850);
    }
  }
  return rows.join('\n');
}
