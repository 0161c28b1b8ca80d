import type { GearingRead } from './car/gearing.ts';
import type { UnusableReading } from './dyno-reading.ts';
import type { CorrectionStandard } from './pull-power.ts';

/** What a power figure rests on, and what is doubtful about it. */
declare module '../result/result.ts' {
  interface NoteFacts {
    'power/default-drag-area': { dragArea: number };
    'power/default-rolling': { coefficient: number };
    'power/default-efficiency': { efficiency: number };
    'power/default-slip': { slip: number };
    'power/default-air': { density: number };
    /** `half` of the 95 % interval of the factor, relative. */
    'power/default-humidity': { relativeHumidity: number; half: number };
    /** The barometer as a person entered it and as the log has it [Pa]. */
    'power/barometers-disagree': { entered: number; logged: number };
    /** Some coefficients of a coast-down are there and some are not. */
    'power/road-load-incomplete': Record<string, never>;
    /** Rolls one way only take slope and wind in; `grade` is what the force may hold of a road called level. */
    'power/coast-down-one-way': { force: number; grade: number };
    'power/coast-down-both-ways': { grade: number; headwind: number };
    /** A foot was on the pedal, or the road turned the engine; `from_s` by the file's own clock. */
    'power/coast-down-not-neutral': { file: string; from_s: number };
    /** More held the car back for some seconds than the fit knows of: a mean force [N]. */
    'power/coast-down-held-back': { file: string; from_s: number; to_s: number; force: number };
    /** A force that is told lies beyond the speeds that were rolled [m/s]. */
    'power/coast-down-beyond': { from: number; to: number };
    /** Rolls the same way are held back by another force in the other log [N], with half of its 95 % interval. */
    'power/coast-down-logs-differ': {
      file: string;
      other: string;
      force: number;
      half: number;
      kind: 'one-way' | 'alike' | 'against';
    };
    /** Some logs were read by the satellite's speed and some by the wheels'. */
    'power/coast-down-two-speeds': Record<string, never>;
    /** No engine speed is logged: a closed throttle in gear slows as a roll in neutral does. */
    'power/coast-down-neutral-untold': Record<string, never>;
    'power/level-assumed': Record<string, never>;
    'power/wheel-inertia-not-counted': { share: number };
    'power/engine-inertia-not-counted': Record<string, never>;
    'power/radius-from-tyre': { tyre: string; radius: number };
    'power/gearing-from-speed': { distancePerTurn: number } & GearingRead;
    'power/slip-from-speed': { slip: number };
    /** Driven tyres always run ahead of the road; a speed of their own shows none of it. */
    'power/speed-of-driven-wheels': { slip: number };
    /** Logged vehicle speed over the speed from engine speed, gear and radius, minus one. */
    'power/speeds-disagree': { difference: number };
    /** Engine speed over road speed moves by this share within the pull: wheel power is from road speed alone. */
    'power/engine-ahead-of-road': { excess: number };
    'power/speed-in-steps': { basis: 'engine-speed' | 'vehicle-speed'; step: number };
    'power/speed-held': { basis: 'engine-speed' | 'vehicle-speed'; interval: number };
    /** Vehicle speed comes so much later than engine speed [s]. */
    'power/speed-late': { lag: number };
    'power/outliers-left-out': { count: number };
    /** `error` is one standard error, also where it is unclear. */
    'power/grade-from-altitude': { grade: number; error: number };
    /** The height rises with the car's own wind; `grade` is the slope that it would show. */
    'power/altitude-with-speed': { grade: number };
    /** One and the same number all through the pull: a dead channel, or a road level to its last digit. */
    'power/altitude-stands-still': Record<string, never>;
    /** Nothing in the file says which unit the height has; `grade` is what it would show in `unit`. */
    'power/altitude-unit-untold': { column: string; unit: string; grade: number };
    'power/altitude-unclear': { grade: number; error: number };
    'power/pull-trimmed': { seconds: number };
    'power/torque-channel-not-used': { column: string };
    /** A channel of power or torque that says nothing in the pull, and what power was had from instead. */
    'power/reading-left-aside': { column: string; why: UnusableReading; instead: 'road' | 'channel' };
    /** How torque at the wheel was read; `ratio` is what the other reading would make of power. */
    'power/wheel-torque-read': { column: string; at: 'engine-speed' | 'axle'; ratio: number | null };
    /** A dyno's reading still stands so long after engine speed has begun to fall [s]. */
    'power/reading-late': { column: string; lag: number };
    /** Nothing in the file says which unit a reading of power or torque has. */
    'power/reading-unit-assumed': { column: string; unit: string; is: 'power' | 'torque' };
    /** The reading is the engine's: wheel power is that times the efficiency. */
    'power/engine-reading': { column: string; efficiency: number };
    /** On a dyno without engine speed it follows from road speed, gear and tyre. */
    'power/dyno-speed-by-gear': Record<string, never>;
    'power/dyno-correction-unknown': { column: string };
    'power/ramp-inertia-added': { inertia: number };
    /** Inertia about the axle is given, but neither gear nor final drive. */
    'power/ramp-inertia-no-gear': Record<string, never>;
    'power/correction-air-unknown': { standard: CorrectionStandard };
    'power/correction-out-of-range': {
      standard: CorrectionStandard;
      what: 'temperature' | 'dryPressure' | 'factor';
      value: number;
      from: number;
      to: number;
    };
    /** Boosted engine: what the standard says, and that control may have made up the air already. */
    'power/correction-boosted': { standard: CorrectionStandard; factor: number };
    /** The air meter stands at its end from that engine speed on [kg/s, rad/s]. */
    'power/airflow-at-end': { flow: number; engineSpeed_rad_s: number };
    /** Neither manifold pressure nor boost is logged, so that nothing tells whether the engine is boosted. */
    'power/correction-boost-untold': { standard: CorrectionStandard; factor: number };
    /** Engine power that the air stands for and the one found, means over the pull. */
    'power/airflow-agrees': { ratio: number; air: number; power: number };
    'power/airflow-disagrees': { ratio: number; from: number; to: number; air: number; power: number };
    /** `half` of the 95 % interval. */
    'power/two-way-slope': { grade: number; half: number };
  }
}
