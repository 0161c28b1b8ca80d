/**
 * How near wheel power comes to the truth on generated drives. Prints a Markdown table for the README.
 *
 *   node tests/bench/power-accuracy.bench.ts [pulls per cell, 30]
 *
 * Each pull has another car, gear, boost curve, slip and noise, drawn from a seed; the error is the root mean square
 * of (found - true) / true over the whole curve of one pull, ends included.
 */
import { powerOfPull } from '../../core/power/index.ts';
import { unwrap } from '../../core/result/index.ts';
import { rpm } from '../../core/units/index.ts';
import { boostedCurve, type Drive, drive, errorAgainst } from '../support/drive-generator.ts';
import { seeded } from '../support/random.ts';

const kmh = 1 / 3.6;
const count = Number(process.argv[2] ?? 30);

/** What the logger does to both speeds; numbers in rpm and km/h, drawn anew for each pull. */
type Logger = {
  readonly title: string;
  readonly sensors: (between: (a: number, b: number) => number) => Partial<Drive>;
  /** Second gear and a boost onset over 80 to 250 rpm in place of third and fourth over 120 to 400. */
  readonly isHard?: boolean;
};

const fine = (between: (a: number, b: number) => number) => ({
  engineSpeed: { noise: rpm(between(2, 8)), step: rpm(1) },
  vehicleSpeed: { noise: between(0.03, 0.1) * kmh, step: 0.1 * kmh },
});
const coarse = (between: (a: number, b: number) => number) => ({
  engineSpeed: { noise: rpm(between(0, 6)), step: rpm(25) },
  vehicleSpeed: { noise: between(0, 0.1) * kmh, step: kmh },
});

const loggers: readonly Logger[] = [
  ...[5, 10, 20, 50, 100].map((rate) => ({
    title: `${rate} Hz, steps of 1 rpm and 0.1 km/h`,
    sensors: (between: (a: number, b: number) => number) => ({ rate, ...fine(between) }),
  })),
  ...[10, 20, 50].map((rate) => ({
    title: `${rate} Hz, steps of 25 rpm and 1 km/h`,
    sensors: (between: (a: number, b: number) => number) => ({ rate, ...coarse(between) }),
  })),
  ...[20, 50].map((rate) => ({
    title: `${rate} Hz, steps of 1 rpm and 0.1 km/h, second gear, steep onset`,
    sensors: (between: (a: number, b: number) => number) => ({ rate, ...fine(between) }),
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
  {
    title: '20 Hz, fine, engine speed alone',
    sensors: (b) => ({ rate: 20, ...fine(b), vehicleSpeed: null }),
  },
  {
    title: '20 Hz, fine, vehicle speed alone',
    sensors: (b) => ({ rate: 20, ...fine(b), engineSpeed: null }),
  },
];

function drivesFor(logger: Logger) {
  const uniform = seeded(20270314);
  const between = (a: number, b: number) => a + (b - a) * uniform();
  return Array.from({ length: count }, (_, i) => {
    const mass = between(950, 2000);
    return drive({
      seed: i + 1,
      mass,
      wheelPower: boostedCurve(
        mass * (logger.isHard ? between(0.12, 0.22) : between(0.14, 0.3)),
        between(2000, 3600),
        logger.isHard ? between(80, 250) : between(120, 400),
        between(4500, 5800),
        between(0.1, 0.4),
      ),
      gearRatio: logger.isHard ? between(1.75, 2.2) : i % 2 === 0 ? between(1.25, 1.45) : between(0.95, 1.1),
      finalDrive: between(3.4, 4.3),
      slip: between(0, 0.03),
      wheelInertia: between(2.5, 5),
      dragArea: between(0.5, 0.9),
      rolling: between(0.009, 0.015),
      rpmFrom: between(2000, 2800),
      rpmTo: between(5800, 7000),
      jitter: between(0, 0.3),
      ...logger.sensors(between),
    });
  });
}

const percent = (share: number) => (100 * share).toFixed(2);
const at = (sorted: readonly number[], share: number) =>
  sorted[Math.floor(share * (sorted.length - 1))] as number;

console.log(`| log | median | 90 % of pulls below | worst | mean error | bandwidth |`);
console.log('| --- | ---: | ---: | ---: | ---: | ---: |');
let milliseconds = 0;
let pulls = 0;
for (const logger of loggers) {
  const found = drivesFor(logger).map((d) => {
    const start = performance.now();
    const power = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    milliseconds += performance.now() - start;
    pulls++;
    return { ...errorAgainst(d.truth, power), bandwidth: power.bandwidth };
  });
  const rms = found.map((f) => f.rms).sort((a, b) => a - b);
  const mean = found.reduce((sum, f) => sum + f.mean, 0) / found.length;
  const width = found.map((f) => f.bandwidth).sort((a, b) => a - b);
  console.log(
    `| ${logger.title} | ${percent(at(rms, 0.5))} % | ${percent(at(rms, 0.9))} % | ${percent(at(rms, 1))} % | ` +
      `${percent(mean)} % | ${at(width, 0.5).toFixed(2)} s |`,
  );
}
console.log(
  `\n${count} pulls a row, in third and fourth gear where nothing else is said; ${(milliseconds / pulls).toFixed(1)} ms a pull.`,
);
