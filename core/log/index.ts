import './notes.ts';
import './problems.ts';

export * from './boost-of.ts';
export * from './channel.ts';
export * from './columns/column-mapping.ts';
export * from './columns/mapping-profile.ts';
export { columnSymbols, symbolsIn } from './formula/column-symbols.ts';
export {
  type DerivedChannel,
  DerivedChannelSchema,
  deriveChannel,
  withDerivedChannels,
} from './formula/derived-channel.ts';
export { kindMeasuredIn } from './formula/dimension.ts';
export { type FormulaParser, loadFormulaParser } from './formula/parse-formula.ts';
export { headingOver, waysByHeading } from './heading.ts';
export { createLogReader, type LogReader, type LogReaderOptions } from './log-reader.ts';
export { median, medianOf } from './median.ts';
export * from './pulls/find-pulls.ts';
export { flagsWithin } from './pulls/flags-within.ts';
export { nearestGear } from './pulls/gear-of.ts';
export * from './pulls/pull.ts';
export { settleSpeedUnit } from './pulls/speed-unit.ts';
export * from './quantity.ts';
export { rangeWithin } from './range-within.ts';
export * from './read-log.ts';
export { lineThrough } from './rises/steady-rise.ts';
export { siScale } from './si-scale.ts';
export { type SpeedLag, speedLag } from './speeds/speed-lag.ts';
export { indexAt } from './speeds/speed-ratio.ts';
export type { OtherFile } from './table/not-a-log.ts';
export { BlockReader, type BlockStyle, type RowBlock, roomOfBlock } from './table/row-block.ts';
export { heldReadings } from './time/held-readings.ts';
export { countedOnAt } from './time/own-clock.ts';
export * from './why-no-log.ts';
