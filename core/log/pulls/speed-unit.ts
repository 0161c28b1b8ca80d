import { type Channel, channelOf, type Log } from '../channel.ts';
import { siScale } from '../si-scale.ts';
import { lineBetweenReadings } from '../time/held-readings.ts';
import type { PullOptions } from './find-pulls.ts';
import { fitsOf, steadyRatios } from './speed-unit-fit.ts';

/** Units that a speed without one is likely in. */
const candidates = ['km/h', 'mph', 'm/s'] as const;
type SpeedUnit = (typeof candidates)[number];

/** So many of the samples in a gear must fall on the car's gears; */
const leastShare = 0.5;
/** in another unit so many times fewer, or of all so many do not, and so many times what does not in the one that fits. */
const clearly = { fewer: 1.6, unexplained: 0.15, times: 3 };
/** One gear alone may be another one in another unit or on another tyre. */
const leastGears = 2;
/** No gear of a car turns its engine faster over the road [rad/m]: a first gear of 17 in all on a tyre of 0.27 m. */
const lowestGear = 75;
/** No gear turns it slower: a last one of 2 in all on a tyre of 0.36 m, and so fast does no car go [m/s]. */
const highestGear = 5.5;
const fastestCar = 95;
/** A gear that was really driven has so many samples of its own. */
const leastSamples = 15;

/**
 * The log with the unit of a vehicle speed that nothing in the file tells taken from the car's gears: all ratios of
 * engine speed to vehicle speed are off by one factor in any other unit. Where no gears are known, or where they fit
 * two units as well, the unit stays as it was taken, with its warning, unless the engine would turn faster over the
 * road than any gear lets it: then it is m/s.
 * A unit that the file states or a person set is never touched, nor are the numbers of the log that is handed in.
 */
export function settleSpeedUnit(log: Log, options: PullOptions): Log {
  const speed = channelOf(log, 'vehicleSpeed');
  const engine = channelOf(log, 'engineSpeed');
  if (!speed || !engine || speed.reason?.code !== 'log/column-by-values') return log;
  const assumed = scaleOf(speed.unit);
  const line = lineBetweenReadings(log.time, speed.values, log.segments);
  const ratios = steadyRatios(log, engine.values, line);
  if (ratios.all.length < leastSamples) return log;
  const byGears = unitByGears(ratios.all, assumed, options);
  if (byGears) return withUnit(log, speed, byGears, 'log/speed-unit-by-gears');
  const byEngine = unitByEngine(ratios.rising, fastestOf(speed.values), assumed);
  return byEngine ? withUnit(log, speed, byEngine, 'log/speed-unit-by-engine') : log;
}

function scaleOf(unit: string): number {
  return siScale('vehicleSpeed', unit)?.factor ?? Number.NaN;
}

/** The one unit in which the ratios are those of the gears; null where none is, or two are. */
function unitByGears(
  ratios: Float64Array,
  assumed: number,
  { gearRatios, finalDrive, rollingRadius_m: radius }: PullOptions,
): SpeedUnit | null {
  if (!gearRatios || gearRatios.length < 2 || !finalDrive || !radius) return null;
  const fits = candidates
    .map((unit) => {
      const turns = ratios.map((r) => (r * assumed * radius) / (scaleOf(unit) * finalDrive));
      return { unit, ...fitsOf(turns, gearRatios) };
    })
    .sort((a, b) => b.share - a.share);
  const [best, next] = fits;
  if (!best || !next || best.share < leastShare || best.gears < leastGears) return null;
  const left = 1 - next.share;
  const isClear =
    best.share >= clearly.fewer * next.share ||
    (left >= clearly.unexplained && left >= clearly.times * (1 - best.share));
  return isClear ? best.unit : null;
}

/** m/s where in mph, and all the more in km/h, no gear could be so low and in m/s all are gears of a car. */
function unitByEngine(rising: Float64Array, fastest: number, assumed: number): SpeedUnit | null {
  const tooLow = rising.filter((r) => (r * assumed) / scaleOf('mph') > lowestGear).length;
  if (tooLow < leastSamples) return null;
  const factor = assumed / scaleOf('m/s');
  const sorted = rising.map((r) => r * factor).sort();
  const low = sorted[Math.floor(0.02 * sorted.length)] as number;
  const high = sorted[Math.floor(0.98 * (sorted.length - 1))] as number;
  return low > highestGear && high < lowestGear && fastest / factor < fastestCar ? 'm/s' : null;
}

function fastestOf(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) if ((values[i] as number) > most) most = values[i] as number;
  return most;
}

function withUnit(
  log: Log,
  speed: Channel,
  unit: SpeedUnit,
  code: 'log/speed-unit-by-gears' | 'log/speed-unit-by-engine',
): Log {
  const factor = scaleOf(unit) / scaleOf(speed.unit);
  const note = { code, facts: { column: speed.column, unit } } as const;
  const settled: Channel = {
    column: speed.column,
    quantity: speed.quantity,
    unit,
    confidence: Math.max(speed.confidence, sure),
    reason: note,
    values: factor === 1 ? speed.values : speed.values.map((v) => v * factor),
    flags: speed.flags,
  };
  return {
    ...log,
    channels: log.channels.map((c) => (c === speed ? settled : c)),
    warnings: log.warnings.map((w) =>
      w.code === 'log/speed-unit-assumed' && w.facts.column === speed.column ? note : w,
    ),
  };
}

/** As sure as a name with a unit that its values told. */
const sure = 0.9;
