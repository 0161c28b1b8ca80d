import { describe, expect, it } from 'vitest';
import { channelOf } from '../../../core/log/index.ts';
import { costOf, engineTable, samplesAround } from '../../../core/log/speeds/lag-cost.ts';
import { speedLag } from '../../../core/log/speeds/speed-lag.ts';
import { rpm } from '../../../core/units/index.ts';
import type { Driven } from '../../support/drive-generator.ts';
import { type Between, coarse, fine, type Logged, manyCars } from '../../support/many-cars.ts';

/** Steps of 1 rpm and 0.1 km/h and nothing else: what is left without a lag is little. */
const quiet = (): Logged => ({
  engineSpeed: { noise: 0, step: rpm(1) },
  vehicleSpeed: { noise: 0, step: 0.1 / 3.6 },
});
const sensors: Record<string, (between: Between) => Logged> = { fine, coarse, quiet };

function speedsOf({ log, pull }: Driven) {
  const [segment] = log.segments;
  const engine = channelOf(log, 'engineSpeed');
  const road = channelOf(log, 'vehicleSpeed');
  if (!segment || !engine || !road) throw new Error('the drive logs both speeds');
  return { log, pull, segment, engine: engine.values, road: road.values };
}

function foundLag(driven: Driven) {
  const { log, pull, segment, engine, road } = speedsOf(driven);
  return speedLag(log.time, engine, road, pull, segment).lag;
}

/** The plain way: every lag with every sample, without any short cut; 0 where none is clearly better than none. */
function plainLag(driven: Driven): number {
  const { log, pull, segment, engine, road } = speedsOf(driven);
  const samples = samplesAround(log.time, road, pull, segment);
  const table = engineTable(log.time, engine, segment, samples);
  if (!table) throw new Error('the drive is long enough');
  const costAt = (lag: number) => costOf(samples, table, table.value, lag);
  const usual = Math.min(...[-0.1, -0.05, 0, 0.05, 0.1].map(costAt));
  const lags = Array.from({ length: 30 }, (_, k) => 0.05 * k - 0.25);
  const best = lags.reduce((least, lag) => (costAt(lag) < costAt(least) ? lag : least));
  return usual - costAt(best) > 12 && Math.abs(best) > 0.13 ? best : 0;
}

describe.each([5, 10, 20])('at %i rows a second', (rate) => {
  describe.each(Object.keys(sensors))('with %s steps', (name) => {
    it('a lag that clearly explains more than none is never passed over', () => {
      let explained = 0;
      for (const lag of [0.1, 0.2, 0.3, 0.4, 0.5])
        for (const isHard of [false, true]) {
          const options = (between: Between): Logged => {
            const { engineSpeed, vehicleSpeed } = { ...sensors[name]?.(between) };
            return { rate, engineSpeed, vehicleSpeed: vehicleSpeed && { ...vehicleSpeed, lag } } as Logged;
          };
          for (const driven of manyCars({ count: 3, seed: 31, isHard, sensors: options })) {
            if (plainLag(driven) === 0) continue;
            explained++;
            expect(Math.abs(foundLag(driven) - lag)).toBeLessThan(0.1);
          }
        }
      // Of thirty: a tenth of a second is no more than usual, two in a slow log may be slip.
      expect(explained).toBeGreaterThan(14);
    });
  });
});

it('a speed that is on time and hardly rounded is told to be on time', () => {
  for (const driven of manyCars({ count: 6, seed: 5, sensors: () => ({ rate: 20, ...quiet() }) }))
    expect(foundLag(driven)).toBe(0);
});
