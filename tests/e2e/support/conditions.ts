import type { Preferences } from '../../../core/contract/index.ts';
import { imperialUnits, metricUnits } from '../../../core/units/index.ts';

export const sizes = [
  { width: 1280, height: 720 },
  { width: 1366, height: 768 },
  { width: 1920, height: 1080 },
] as const;

const lights = [
  { theme: 'day', units: 'metric' },
  { theme: 'day', units: 'imperial' },
  { theme: 'night', units: 'metric' },
  { theme: 'night', units: 'imperial' },
] as const;

export const placesOfUse = ['desk', 'cell', 'seat'] as const;
export type PlaceOfUse = (typeof placesOfUse)[number];

export type Condition = {
  readonly name: string;
  readonly isMetric: boolean;
  /** For `test.use`. */
  readonly options: {
    readonly viewport: { readonly width: number; readonly height: number };
    readonly startsWith: 'nothing';
    readonly preferences: Partial<Preferences>;
  };
};

/**
 * Under what a place is walked through. Each of the twelve combinations of size, light and units occurs once
 * across the three places, and each place meets every size, both lights and both units.
 */
export function conditionsOf(place: PlaceOfUse): readonly Condition[] {
  return lights.flatMap(({ theme, units }, l) =>
    sizes
      .filter((_, s) => (s + l) % placesOfUse.length === placesOfUse.indexOf(place))
      .map(({ width, height }): Condition => {
        const isMetric = units === 'metric';
        return {
          name: `${width}x${height}, ${theme}, ${units}`,
          isMetric,
          options: {
            viewport: { width, height },
            startsWith: 'nothing',
            preferences: { theme, units: isMetric ? metricUnits : imperialUnits },
          },
        };
      }),
  );
}
