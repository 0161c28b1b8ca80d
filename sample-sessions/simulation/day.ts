import { randomOf } from './random.ts';

/** The invented place and air: a level closed test oval, pulls always on the same straight, hardly any wind. */
export const air = {
  pressure: 100.6e3,
  temperature: 285.15,
  relativeHumidity: 0.6,
  /** Saturation pressure of water at 12 C, 1,403 Pa, times the humidity [Pa]. */
  vapourPressure: 842,
} as const;

/** Density of the moist air outside [kg/m^3]. */
export const airDensity = (air.pressure - 0.378 * air.vapourPressure) / (287.05 * air.temperature);

/** What differs between two pulls of one tune. */
export type PullLuck = {
  /** The boost control settles a little off its target [Pa]. */
  readonly boostOffset: number;
  /** Heat left in the cooler from the pull before [K]. */
  readonly soak: number;
  /** Against the car [m/s]. */
  readonly headwind: number;
  /** Share by which the combustion is better than usual. */
  readonly combustion: number;
  /** Share by which the spray system delivers more than usual. */
  readonly fluid: number;
  readonly startSpeed_rpm: number;
  readonly liftSpeed_rpm: number;
  readonly coolant: number;
};

/** A pull without luck: every scatter at nothing. */
export const usual: PullLuck = {
  boostOffset: 0,
  soak: 5,
  headwind: 0,
  combustion: 0,
  fluid: 0,
  startSpeed_rpm: 2350,
  liftSpeed_rpm: 6450,
  coolant: 363,
};

/** Deviations of the scatters; together about 0.35 % of wheel power from one pull to the next. */
export const scatter = {
  boostOffset: 350,
  soak: 1.0,
  headwind: 0.15,
  combustion: 0.002,
  fluid: 0.01,
  startSpeed_rpm: 45,
  liftSpeed_rpm: 30,
  coolant: 0.8,
} as const;

export function luckOf(seed: number, label: string): PullLuck {
  const { normal } = randomOf(seed, `${label}/luck`);
  const about = (key: keyof PullLuck) => usual[key] + scatter[key] * normal();
  return {
    boostOffset: about('boostOffset'),
    soak: about('soak'),
    headwind: about('headwind'),
    combustion: about('combustion'),
    fluid: about('fluid'),
    startSpeed_rpm: about('startSpeed_rpm'),
    liftSpeed_rpm: about('liftSpeed_rpm'),
    coolant: about('coolant'),
  };
}
