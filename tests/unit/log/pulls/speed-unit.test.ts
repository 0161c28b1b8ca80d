import { describe, expect, it } from 'vitest';
import {
  type ColumnMapping,
  channelOf,
  type Log,
  readLog,
  settleSpeedUnit,
} from '../../../../core/log/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

import { normal, seeded } from '../../../support/random.ts';

const car = { gearRatios: [3.3, 2.05, 1.4, 1.05, 0.82], finalDrive: 4.1, rollingRadius_m: 0.31 };
// Miles of 1609.344 m by the international yard and pound agreement of 1959.
const perSecond = { 'km/h': 3.6, mph: 3600 / 1609.344, 'm/s': 1 } as const;
type Unit = keyof typeof perSecond;

/** Up through some gears at full throttle, 6 s in each, the clutch open for half a second in between. */
function textOf(unit: Unit, gears: readonly number[], options = { header: 'Speed', gearing: car }): string {
  const gauss = normal(seeded(gears.length + unit.length));
  const { gearRatios, finalDrive, rollingRadius_m } = options.gearing;
  const rows: string[] = [`Time (s),Engine speed (rpm),${options.header},Pedal (%)`];
  let t = 0;
  for (const gear of gears) {
    const turns = ((gearRatios[gear - 1] as number) * finalDrive) / rollingRadius_m;
    for (let i = 0; i < 120; i++, t += 0.05) {
      const rpm = 2600 + 3200 * (i / 120);
      const v = (rpm * Math.PI) / 30 / turns / 1.012;
      const logged = v * perSecond[unit];
      rows.push([t.toFixed(2), (rpm + 4 * gauss()).toFixed(0), logged.toFixed(1), '100'].join(','));
    }
    for (let i = 0; i < 10; i++, t += 0.05)
      rows.push(
        [t.toFixed(2), (5800 - 320 * i).toFixed(0), (20 * perSecond[unit]).toFixed(1), '0'].join(','),
      );
  }
  return rows.join('\n');
}

const logOf = (text: string, mapping: readonly ColumnMapping[] = []): Log =>
  unwrap(readLog(new TextEncoder().encode(text), { file: 'bare.csv', mapping: [...mapping] }));
const speedOf = (log: Log) => channelOf(log, 'vehicleSpeed');
const codes = (log: Log) => log.warnings.map((w) => w.code).filter((c) => c.startsWith('log/speed-unit'));

describe.each(['km/h', 'mph', 'm/s'] as const)('a speed without a unit that is in %s', (unit) => {
  const read = logOf(textOf(unit, [2, 3, 4]));

  it('is read in it where the gears of the car fit no other', () => {
    const settled = settleSpeedUnit(read, car);
    expect(speedOf(settled)?.unit).toBe(unit);
    expect(codes(settled)).toEqual(['log/speed-unit-by-gears']);
    // 2,600 rpm in second: 2600 * 2 pi / 60 * 0.31 / (2.05 * 4.1) / 1.012 = 9.92 m/s by hand.
    expect(speedOf(settled)?.values[0]).toBeCloseTo(9.92, 0);
  });

  it('is so with a tyre 2.5 % smaller or larger than the car file has it', () => {
    for (const share of [0.975, 1.025]) {
      const settled = settleSpeedUnit(read, { ...car, rollingRadius_m: car.rollingRadius_m * share });
      expect(speedOf(settled)?.unit).toBe(unit);
    }
  });

  it('stays in the unit that a person set, whatever the gears say', () => {
    for (const byHand of ['km/h', 'mph', 'm/s']) {
      const log = logOf(textOf(unit, [2, 3, 4]), [
        { column: 'Speed', quantity: 'vehicleSpeed', unit: byHand },
      ]);
      expect(settleSpeedUnit(log, car)).toBe(log);
      expect(speedOf(log)?.unit).toBe(byHand);
    }
  });

  it('keeps its warning where gears, final drive or tyre are not known', () => {
    for (const missing of [{ gearRatios: [] }, { finalDrive: null }, { rollingRadius_m: null }]) {
      const settled = settleSpeedUnit(read, { ...car, ...missing });
      expect(speedOf(settled)?.unit).toBe('km/h');
      expect(codes(settled)).toEqual(['log/speed-unit-assumed']);
    }
  });

  it('leaves the log that was read as it is', () => {
    const before = speedOf(read)?.values.slice();
    settleSpeedUnit(read, car);
    expect(speedOf(read)?.values).toEqual(before);
    expect(codes(read)).toEqual(['log/speed-unit-assumed']);
  });
});

it('a unit that the file states is believed, even where the gears say another', () => {
  const log = logOf(textOf('mph', [2, 3, 4], { header: 'Speed (km/h)', gearing: car }));
  expect(settleSpeedUnit(log, car)).toBe(log);
});

it('one gear that fits second in one unit and third in another settles nothing', () => {
  // 2.25 over 1.40 is 1.607: in mph third looks as second does in km/h.
  const gearing = { ...car, gearRatios: [3.5, 2.25, 1.4, 1.0] };
  const settled = settleSpeedUnit(logOf(textOf('mph', [3], { header: 'Speed', gearing })), gearing);
  expect(codes(settled)).toEqual(['log/speed-unit-assumed']);
  // With fourth beside it, it does: 1.0 times 1.609 is no gear of this box.
  const two = settleSpeedUnit(logOf(textOf('mph', [3, 4], { header: 'Speed', gearing })), gearing);
  expect(speedOf(two)?.unit).toBe('mph');
});

it('one gear settles nothing even where it fits one unit: on a tyre that is typed wrong it may be another gear', () => {
  expect(codes(settleSpeedUnit(logOf(textOf('mph', [4])), car))).toEqual(['log/speed-unit-assumed']);
  expect(codes(settleSpeedUnit(logOf(textOf('mph', [3, 4])), car))).toEqual(['log/speed-unit-by-gears']);
});

describe('without a car', () => {
  it('m/s is told where first gear is driven, since in mph no car has one so low', () => {
    const settled = settleSpeedUnit(logOf(textOf('m/s', [1, 2, 3])), {});
    expect(speedOf(settled)?.unit).toBe('m/s');
    expect(codes(settled)).toEqual(['log/speed-unit-by-engine']);
  });
  it.each(['km/h', 'mph'] as const)('%s is not told from first gear, and the warning stays', (unit) => {
    expect(codes(settleSpeedUnit(logOf(textOf(unit, [1, 2, 3])), {}))).toEqual(['log/speed-unit-assumed']);
  });
  it('m/s is not told from third gear, and the warning stays', () => {
    expect(codes(settleSpeedUnit(logOf(textOf('m/s', [3])), {}))).toEqual(['log/speed-unit-assumed']);
  });
});
