import { type Act, type Drive, Driver, randomCar, type TestCar } from './drive.ts';
import type { Random } from './random.ts';

export type Scenario = { readonly car: TestCar; readonly drive: Drive; readonly kind: string };

/** A drive on a road: cruising, part throttle, stabs and pulls of every sort, in random order. */
export function roadScenario(random: Random, hardestPart = 0.75): Scenario {
  const car = randomCar(random);
  const acts: Act[] = [{ kind: 'idle', seconds: random.between(1, 4) }];
  const gear = pullGear(car, random);
  const pulls = random.int(1, 4);
  acts.push({ kind: 'cruise', gear, rpm: random.between(1900, 2600), seconds: random.between(2, 6) });
  for (let i = 0; i < pulls; i++) {
    if (random.chance(0.5))
      acts.push({
        kind: 'part',
        gear,
        pedal: random.between(0.3, hardestPart),
        fromRpm: random.between(1800, 2500),
        toRpm: random.between(3500, 5000),
      });
    if (random.chance(0.2)) acts.push({ kind: 'stab', gear, seconds: random.between(0.1, 0.4) });
    if (random.chance(0.5))
      acts.push({ kind: 'cruise', gear, rpm: random.between(1800, 3200), seconds: random.between(1, 8) });
    acts.push(randomPull(random, gear, car));
  }
  acts.push({ kind: 'cruise', gear, rpm: random.between(1900, 3000), seconds: random.between(1, 5) });
  return { car, drive: new Driver(car).run(acts), kind: 'road' };
}

/** A gear in which a pull lasts some 2 to 15 s: nobody measures for half a minute on a road. */
function pullGear(car: TestCar, random: Random): number {
  const kilogramsPerTorque = car.mass / (car.torque * (1 + (0.85 * car.fullBoost) / 1e5));
  return random.int(2, kilogramsPerTorque > 5 ? 3 : 4);
}

function randomPull(random: Random, gear: number, car: TestCar): Act {
  const top = random.between(0.88, 0.985) * car.limiterRpm;
  const base = {
    kind: 'pull' as const,
    gear,
    fromRpm: random.between(2000, 3000),
    toRpm: top,
    rampIn: random.between(0.08, 0.6),
    rampOut: random.between(0.08, 0.3),
  };
  const sort = random.next();
  if (sort < 0.12) return { ...base, toRpm: base.fromRpm + random.between(1000, 1700) };
  if (sort < 0.28)
    return { ...base, thenShiftTo: random.between(5200, 6200), isAutomatic: random.chance(0.4) };
  if (sort < 0.36) return { ...base, toRpm: car.limiterRpm, onLimiter: random.between(0.3, 0.9) };
  if (sort < 0.44) return { ...base, spinAt: random.between(0.15, 0.4) };
  return base;
}

/** A dyno file that begins and ends at full throttle. */
export function dynoScenario(random: Random): Scenario {
  const car = randomCar(random);
  const gear = pullGear(car, random);
  const drive = new Driver(car).run([
    { kind: 'cruise', gear, rpm: 1500, seconds: 1 },
    { kind: 'pull', gear, fromRpm: 2200, toRpm: 0.97 * car.limiterRpm, rampIn: 0.2, rampOut: 0.2 },
  ]);
  const pull = drive.pulls[0];
  if (!pull) throw new Error('a dyno drive has one pull');
  const from = drive.time.findIndex((t) => t >= pull.start);
  const to = drive.time.findIndex((t) => t > pull.end);
  const cut = <T>(list: T[]) => list.slice(from, to);
  return {
    car,
    kind: 'dyno',
    drive: {
      step: drive.step,
      time: cut(drive.time),
      rpm: cut(drive.rpm),
      speed: cut(drive.speed),
      pedal: cut(drive.pedal),
      boost: cut(drive.boost),
      gear: cut(drive.gear),
      isSpinning: cut(drive.isSpinning),
      pulls: [pull],
    },
  };
}
