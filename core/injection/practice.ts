/**
 * Numbers of practice that a plan falls back on. Each is said where it is used, and each can be overruled in the
 * setup. Source: common practice.
 */
export const practice = {
  /** Half and half by volume is usual. */
  mix: { by: 'poured', methanol_percent: 50, ethanol_percent: 0 },
  /** 0.30 to 0.36 kg/kWh at full load [kg/J]. */
  fuelConsumption: 0.335 / 3.6e6,
  /** 0.85 to 1.05 at full load. */
  volumetricEfficiency: 0.95,
  /** [K] */
  manifoldTemperature: 318.15,
  /** 0.78 to 0.88 at full load. */
  lambda: 0.82,
  /** A pull in third lasts 6 to 12 s. */
  pullDuration: 8,
  /** 2,500 to 6,500 rpm [rad/s]. */
  pullFrom: (2500 * Math.PI) / 30,
  pullTo: (6500 * Math.PI) / 30,
  /** Share of the speed range in which boost builds, where no boost curve is known. */
  spoolShare: 0.25,
  /** Matched within 15 % of the need; much too large from twice. */
  matchedWithin: 0.15,
  muchTooLarge: 2,
  /** 175 mL/min at 250 hp [m^3/J]. */
  fluidPerPower: 175e-6 / 60 / (250 * 745.69987158),
  /** Fluid over fuel below which it is hardly seen, and above which it quenches. */
  hardlySeen: 0.08,
  quenches: 0.3,
  /** Boost by which fluid has to be there before the knock limit, and by which a fallback stays under it [Pa]. */
  knockMargin: 5e3,
  fallbackMargin: 10e3,
  /** Protection has to act within a few tenths of a second. */
  actWithin: 0.3,
  /** Planned against used fluid over a tank. */
  refillWithin: 0.15,
  /** Under half the full pressure the drops of a pressure nozzle turn coarse. */
  coarseBelow: 0.5,
  /** Flow below this share of the full one is too unsteady to guard. */
  guardFrom: 0.25,
} as const;
