import type { UnusableReading } from './dyno-reading.ts';

/** Why power cannot be told. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    /** Neither engine speed nor vehicle speed, torque or power is logged. */
    'power/no-speed': Record<string, never>;
    /** Engine speed alone is logged and the car's gearing is not known. */
    'power/no-gearing': { missing: 'gearRatios' | 'finalDrive' | 'radius' | 'gear' };
    /** Vehicle speed alone is logged, so that nothing tells the engine speed. */
    'power/no-engine-speed': { missing: 'gearRatios' | 'finalDrive' | 'radius' | 'gear' };
    /** On a dyno speed alone says nothing: the rollers' inertia and brake are unknown, and no air resists. */
    'power/no-dyno-reading': Record<string, never>;
    /** A dyno's channel of power or torque says nothing in the pull, and there is no other. */
    'power/dyno-reading-unusable': { column: string; why: UnusableReading };
    /** Too few samples or too short for a derivative. */
    'power/pull-too-short': { samples: number; seconds: number };
    /** The car stands or rolls back in the pull. */
    'power/not-accelerating': { from_s: number; to_s: number };
    /** No car engine turns so fast: the column or its unit is wrong. */
    'power/engine-too-fast': { engineSpeed: number };
    'power/bad-air': { field: 'pressure' | 'temperature' | 'relativeHumidity'; value: number };
    'power/bad-tyre': { text: string };
    'power/coast-down-too-short': { samples: number; seconds: number; speedDrop: number };
    /** Nowhere in the log does the car roll in neutral for long enough. */
    'power/coast-down-none': Record<string, never>;
    'power/coast-down-too-many': { rolls: number; most: number };
    'power/coast-down-not-slowing': { from: number; to: number };
    'power/coast-down-no-fit': { samples: number };
    'power/no-two-way': { out: number; back: number };
    'power/no-common-band': Record<string, never>;
    'power/no-air-flow': Record<string, never>;
  }
}
