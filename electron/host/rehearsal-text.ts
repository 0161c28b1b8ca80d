/** Rows a second, as in a log that is big enough for a worker. */
const rate = 100;
/** Cruising, a pull, and rolling on [s]. */
const parts = [3, 6, 1] as const;
const pulls = 4;

/** An invented car that cruises, pulls and rolls on; noise and steps of usual size, the same each time. */
export function rehearsalText(): string {
  const [cruise, pull] = parts;
  const rows = [
    'Time (s),Engine Speed (rpm),Vehicle Speed (km/h),Pedal (%),Throttle (%),Boost (kPa),Lambda,Spark Advance (deg),Intake Air Temp (C)',
  ];
  let random = 1;
  const noise = () => {
    random = (Math.imul(random, 1664525) + 1013904223) >>> 0;
    return random / 2 ** 32 - 0.5;
  };
  const whole = parts.reduce((sum, s) => sum + s, 0);
  for (let row = 0; row < pulls * whole * rate; row++) {
    const t = row / rate;
    const since = (t % whole) - cruise;
    const isPull = since >= 0 && since < pull;
    // Torque falls towards the top; from there the car slows.
    const climb = (s: number) => 2500 + 4200 * (1 - Math.exp(-s / 4));
    const rolled = (since - pull) / (whole - cruise - pull);
    const rpm = since < 0 ? 2500 : isPull ? climb(since) : climb(pull) + rolled * (2500 - climb(pull));
    const boost = isPull ? Math.min(110, 60 * since) : -40;
    const slip = isPull ? 0.015 : 0;
    rows.push(
      [
        t.toFixed(2),
        (rpm + 12 * noise()).toFixed(0),
        (rpm * 0.0235 * (1 - slip) + 0.2 * noise()).toFixed(1),
        (isPull ? 100 : since < 0 ? 20 + noise() : 0).toFixed(1),
        (isPull ? 99.6 : 14 + noise()).toFixed(1),
        (boost + noise()).toFixed(1),
        ((isPull ? 0.82 : 1) + 0.02 * noise()).toFixed(3),
        (isPull ? 14 : 32 + noise()).toFixed(1),
        (31 + 3 * noise()).toFixed(1),
      ].join(','),
    );
  }
  return `${rows.join('\n')}\n`;
}
