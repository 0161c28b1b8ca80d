import './notes.ts';
import './problems.ts';

export * from './boost-of.ts';
export * from './channel.ts';
export * from './column-mapping.ts';
export * from './find-pulls.ts';
export { flagsWithin } from './flags-within.ts';
export {
  type DerivedChannel,
  DerivedChannelSchema,
  deriveChannel,
  withDerivedChannels,
} from './formula/derived-channel.ts';
export { type FormulaParser, loadFormulaParser } from './formula/parse-formula.ts';
export { nearestGear } from './gear-of.ts';
export { heldReadings } from './held-readings.ts';
export { createLogReader, type LogReader, type LogReaderOptions } from './log-reader.ts';
export * from './mapping-profile.ts';
export { median, medianOf } from './median.ts';
export type { OtherFile } from './not-a-log.ts';
export { countedOnAt } from './own-clock.ts';
export * from './pull.ts';
export * from './quantity.ts';
export * from './read-log.ts';
export { siScale } from './si-scale.ts';
export { type SpeedLag, speedLag } from './speed-lag.ts';
export { indexAt } from './speed-ratio.ts';
export { settleSpeedUnit } from './speed-unit.ts';
export * from './why-no-log.ts';
