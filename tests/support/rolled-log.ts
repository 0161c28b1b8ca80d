/** What an invented car of 1450 kg holds against the road: F = a + b v + c v^2 in SI. */
export const rolledTruth = { mass: 1450, a: 170, b: 1.2, c: 0.4 };

/**
 * A log of rolls in neutral, driven up to speed before each, on a slope that pushes with `slopeForce` [N] and in a steady
 * wind [m/s] against the way out. Each next roll goes the other way, unless `ways` says.
 */
export function rolledLog({
  rolls = 2,
  ways = Array.from({ length: rolls }, (_, n) => (n % 2 === 0 ? 1 : -1)),
  slopeForce = 71,
  wind = 0,
  mass = rolledTruth.mass,
  fastest = 36,
  hasEngineSpeed = true,
  hasPosition = false,
  brake = 0,
}: {
  readonly rolls?: number;
  readonly ways?: readonly (1 | -1)[];
  readonly slopeForce?: number;
  readonly wind?: number;
  readonly mass?: number;
  readonly fastest?: number;
  readonly hasEngineSpeed?: boolean;
  /** Degrees along a meridian. */
  readonly hasPosition?: boolean;
  /** Force of a brake that is dragged from 25 to 22 m/s in each roll [N]. */
  readonly brake?: number;
} = {}): string {
  const { a, b, c } = rolledTruth;
  const names = [
    'Time (s)',
    ...(hasEngineSpeed ? ['RPM'] : []),
    'Speed (km/h)',
    ...(hasPosition ? ['Latitude', 'Longitude'] : []),
  ];
  const rows = [names.join(',')];
  let t = 0;
  let latitude = 52;
  const write = (v: number, rpm: number, way: number) => {
    t += 0.1;
    latitude += (way * v * 0.1) / 111_195;
    const speed = (3.6 * v).toFixed(1);
    const position = hasPosition ? [latitude.toFixed(6), '13.4'] : [];
    rows.push([t.toFixed(1), ...(hasEngineSpeed ? [rpm] : []), speed, ...position].join(','));
  };
  for (const way of ways) {
    let v = Math.min(20, fastest - 1);
    for (; v < fastest; v += 0.1) write(v, Math.round(80 * v), way);
    while (v > 3) {
      const dragged = v < 25 && v > 22 ? brake : 0;
      for (let i = 0; i < 20; i++)
        v -= ((a + dragged + slopeForce * way + b * v + c * (v + way * wind) ** 2) / mass) * 0.005;
      write(v, 850, way);
    }
  }
  return rows.join('\n');
}
