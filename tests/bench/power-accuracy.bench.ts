/**
 * How near wheel power comes to the truth on generated drives. Prints a Markdown table for the README.
 *
 *   node tests/bench/power-accuracy.bench.ts [pulls per cell, 30] [seed, 20270314]
 *
 * Each pull has another car, gear, boost curve, slip and noise, drawn from a seed; the error is the root mean square
 * of (found - true) / true over the whole curve of one pull, ends included. The last column is the share of all
 * points at which the truth lies within 1.96 standard errors.
 */
import { powerOfPull } from '../../core/power/index.ts';
import { unwrap } from '../../core/result/index.ts';
import { errorAgainst, heldShare } from '../support/drive-generator.ts';
import { type Between, type CarsOptions, coarse, fine, type Logged, manyCars } from '../support/many-cars.ts';

const count = Number(process.argv[2] ?? 30);
const seed = Number(process.argv[3] ?? 20270314);

type Logger = Omit<CarsOptions, 'count' | 'seed'> & { readonly title: string };

const loggers: readonly Logger[] = [
  ...[5, 10, 20, 50, 100].map((rate) => ({
    title: `${rate} Hz, steps of 1 rpm and 0.1 km/h`,
    sensors: (between: Between): Logged => ({ rate, ...fine(between) }),
  })),
  ...[10, 20, 50].map((rate) => ({
    title: `${rate} Hz, steps of 25 rpm and 1 km/h`,
    sensors: (between: Between): Logged => ({ rate, ...coarse(between) }),
  })),
  ...[20, 50].map((rate) => ({
    title: `${rate} Hz, steps of 1 rpm and 0.1 km/h, second gear, steep onset`,
    sensors: (between: Between): Logged => ({ rate, ...fine(between) }),
    isHard: true,
  })),
  {
    title: '10 Hz, steps of 25 rpm and 1 km/h, second gear, steep onset',
    sensors: (between) => ({ rate: 10, ...coarse(between) }),
    isHard: true,
  },
  {
    title: '20 Hz, steps of 25 rpm and 1 km/h, read at 10 and 5 Hz',
    sensors: (between) => {
      const { engineSpeed, vehicleSpeed } = coarse(between);
      return {
        rate: 20,
        engineSpeed: { ...engineSpeed, hold: 0.1 },
        vehicleSpeed: { ...vehicleSpeed, hold: 0.2 },
      };
    },
  },
  {
    title: '20 Hz, fine, vehicle speed 0.1 s late',
    sensors: (between) => {
      const { engineSpeed, vehicleSpeed } = fine(between);
      return { rate: 20, engineSpeed, vehicleSpeed: { ...vehicleSpeed, lag: 0.1 } };
    },
  },
  ...[
    { title: 'vehicle speed read once a second, whole km/h', change: { hold: 1, step: 1 / 3.6 } },
    { title: 'vehicle speed read twice a second', change: { hold: 0.5 } },
    { title: 'vehicle speed 0.3 s late', change: { lag: 0.3 } },
    { title: 'vehicle speed smoothed over 0.3 s', change: { smoothed: 0.3 } },
  ].flatMap(({ title, change }) =>
    [false, true].map((isHard) => ({
      title: `20 Hz, fine, ${title}${isHard ? ', second gear' : ''}`,
      sensors: (between: Between): Logged => {
        const { engineSpeed, vehicleSpeed } = fine(between);
        const phase = 'hold' in change && change.hold ? between(0.05, change.hold) : 0;
        return { rate: 20, engineSpeed, vehicleSpeed: { ...vehicleSpeed, ...change, phase } };
      },
      isHard,
    })),
  ),
  {
    title: '20 Hz, fine, engine speed alone',
    sensors: (b) => ({ rate: 20, ...fine(b), vehicleSpeed: null }),
  },
  {
    title: '20 Hz, fine, vehicle speed alone',
    sensors: (b) => ({ rate: 20, ...fine(b), engineSpeed: null }),
  },
];

const percent = (share: number) => (100 * share).toFixed(2);
const at = (sorted: readonly number[], share: number) =>
  sorted[Math.floor(share * (sorted.length - 1))] as number;

console.log(`| log | median | 90 % of pulls below | worst | mean error | bandwidth | inside 95 % |`);
console.log('| --- | ---: | ---: | ---: | ---: | ---: | ---: |');
let milliseconds = 0;
let pulls = 0;
for (const logger of loggers) {
  const found = manyCars({ ...logger, count, seed }).map((d) => {
    const start = performance.now();
    const power = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    milliseconds += performance.now() - start;
    pulls++;
    return { ...errorAgainst(d.truth, power), held: heldShare(d.truth, power), bandwidth: power.bandwidth };
  });
  const rms = found.map((f) => f.rms).sort((a, b) => a - b);
  const mean = found.reduce((sum, f) => sum + f.mean, 0) / found.length;
  const points = found.reduce((sum, f) => sum + f.points, 0);
  const held = found.reduce((sum, f) => sum + f.held * f.points, 0) / points;
  const width = found.map((f) => f.bandwidth).sort((a, b) => a - b);
  console.log(
    `| ${logger.title} | ${percent(at(rms, 0.5))} % | ${percent(at(rms, 0.9))} % | ${percent(at(rms, 1))} % | ` +
      `${percent(mean)} % | ${at(width, 0.5).toFixed(2)} s | ${percent(held)} % |`,
  );
}
console.log(
  `\n${count} pulls a row, in third and fourth gear where nothing else is said; ${(milliseconds / pulls).toFixed(1)} ms a pull.`,
);
