import { describe, expect, it } from 'vitest';
import { inputUncertainty, type PullPower, powerOfPull, wheelPowerHalf } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { drive, usualDrive } from '../../support/drive-generator.ts';

const d = drive({ engineSpeed: null });

function withRadius(share: number): PullPower {
  const { radius, gearRatio, finalDrive } = usualDrive;
  const car = {
    ...d.car,
    gearRatios: [gearRatio],
    finalDrive,
    pullGear: 1,
    rollingRadius_m: radius * share,
    tyreSlip: 0,
  };
  return unwrap(powerOfPull(d.log, { ...d.pull, gear: 1 }, car, d.conditions));
}

describe('a pull whose engine speed follows from vehicle speed, gear and tyre', () => {
  it.each([-1, 1])(
    'has a band that holds a radius off by as much as its interval allows, to side %i',
    (sign) => {
      const told = withRadius(1);
      const other = withRadius(1 + sign * 1.96 * inputUncertainty.radiusGiven);
      const half = wheelPowerHalf(told);
      const of = new Map(
        [...other.engineSpeed_rad_s].map((w, i) => [Math.round(w * 100), other.wheelPower[i]]),
      );
      const shared = [...told.engineSpeed_rad_s].flatMap((w, i) => {
        const power = of.get(Math.round(w * 100));
        return power === undefined
          ? []
          : [Math.abs(power - (told.wheelPower[i] as number)) / (half[i] as number)];
      });
      expect(shared.length).toBeGreaterThan(50);
      expect(Math.max(...shared)).toBeLessThan(1.05);
    },
  );
});
