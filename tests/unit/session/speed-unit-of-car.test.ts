import { describe, expect, it } from 'vitest';
import type { ColumnMapping } from '../../../core/log/index.ts';
import { CarSchema, ConditionsSchema } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { analyseRun } from '../../../core/session/index.ts';

const car = CarSchema.parse({
  mass_kg: 1400,
  gearRatios: [3.3, 2.05, 1.4, 1.05],
  finalDrive: 4.1,
  tyre: '225/45 R17',
});
/** 0.97 (0.2159 + 0.10125) m, as the sidewall has it. */
const radius = 0.3077;

/** Pulls in third and second gear, lifted in between, vehicle speed in mph. */
function text(header: string): Uint8Array {
  const rows = [`Time (s),Engine speed (rpm),${header},Pedal (%)`];
  let t = 0;
  const write = (rpm: number, turns: number, pedal: number) => {
    const mph = ((rpm * Math.PI) / 30 / turns) * radius * (3600 / 1609.344);
    rows.push([t.toFixed(2), rpm.toFixed(0), mph.toFixed(1), pedal].join(','));
    t += 0.05;
  };
  for (const ratio of [1.4, 2.05]) {
    const turns = ratio * 4.1;
    for (let i = 0; i < 40; i++) write(2500, turns, 20);
    for (let i = 0; i < 120; i++) write(2500 + 3500 * (i / 120), turns, 100);
    for (let i = 0; i < 80; i++) write(6000 - 25 * i, turns, 0);
  }
  return new TextEncoder().encode(rows.join('\n'));
}

function analysed(header: string, columns: ColumnMapping[] = []) {
  const record = { columns, pullEdits: [] };
  const conditions = ConditionsSchema.parse({ place: 'road', ambient_C: 20, barometer_kPa: 101.3 });
  return unwrap(analyseRun(text(header), { file: 'a.csv', runId: 'a', record, car, conditions }));
}
const peakOf = (a: ReturnType<typeof analysed>) => Math.max(...(a.pulls[0]?.power?.wheelPower ?? []));

describe('a log whose speed has no unit', () => {
  const stated = analysed('Speed (mph)');

  it('gives the power and the gears that it gives with its unit, by the gears of the car', () => {
    const bare = analysed('Speed');
    expect(bare.pulls.map((p) => p.pull.gear)).toEqual([3, 2]);
    expect(peakOf(bare) / peakOf(stated)).toBeCloseTo(1, 9);
    expect(bare.warnings.map((w) => w.code)).toContain('log/speed-unit-by-gears');
    expect(bare.warnings.map((w) => w.code)).not.toContain('log/speed-unit-assumed');
  });

  it('is read as a person set it, even where the gears say another unit', () => {
    const byHand = analysed('Speed', [{ column: 'Speed', quantity: 'vehicleSpeed', unit: 'km/h' }]);
    expect(byHand.warnings.map((w) => w.code)).not.toContain('log/speed-unit-by-gears');
    expect(peakOf(byHand) / peakOf(stated)).toBeLessThan(0.6);
  });
});
