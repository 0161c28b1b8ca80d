import type { Random } from './random.ts';

/** An invented car, SI. */
export type TestCar = {
  readonly mass: number;
  readonly gearRatios: readonly number[];
  readonly finalDrive: number;
  readonly rollingRadius: number;
  readonly dragArea: number;
  readonly rollingCoefficient: number;
  readonly efficiency: number;
  /** Torque at full throttle without boost [N m]. */
  readonly torque: number;
  /** [Pa] */
  readonly fullBoost: number;
  /** Engine speed at which boost is full [rpm]. */
  readonly spoolRpm: number;
  readonly limiterRpm: number;
  /** Seconds for boost to follow. */
  readonly turboLag: number;
};

/** One thing that the driver does. */
export type Act =
  | { readonly kind: 'idle'; readonly seconds: number }
  | { readonly kind: 'cruise'; readonly gear: number; readonly rpm: number; readonly seconds: number }
  | {
      readonly kind: 'part';
      readonly gear: number;
      readonly pedal: number;
      readonly fromRpm: number;
      readonly toRpm: number;
    }
  | {
      readonly kind: 'pull';
      readonly gear: number;
      readonly fromRpm: number;
      readonly toRpm: number;
      readonly rampIn: number;
      readonly rampOut: number;
      /** Then up a gear with a lift and on at full throttle to this speed, if given. */
      readonly thenShiftTo?: number;
      /** The gear change is made by the box at full pedal. */
      readonly isAutomatic?: boolean;
      /** Seconds held on the limiter before the lift. */
      readonly onLimiter?: number;
      /** Driven wheels spin for a moment at this share of the pull. */
      readonly spinAt?: number;
    }
  | { readonly kind: 'stab'; readonly gear: number; readonly seconds: number };

/** A drive, sampled at `step` seconds; one number per step. */
export type Drive = {
  readonly step: number;
  readonly time: number[];
  readonly rpm: number[];
  readonly speed: number[];
  /** 0 to 1. */
  readonly pedal: number[];
  readonly boost: number[];
  readonly gear: number[];
  readonly isSpinning: boolean[];
  /** Full-throttle pulls as driven: from full pedal reached to the last moment of it, one gear each. */
  readonly pulls: TruePull[];
};

export type TruePull = {
  readonly start: number;
  readonly end: number;
  readonly gear: number;
  readonly isAborted: boolean;
  readonly ends: 'lift' | 'shift';
};

const gravity = 9.81;
const airDensity = 1.2;
const idleRpm = 850;

/** A plausible boosted car drawn at random; nothing is modelled on a real one. */
export function randomCar(random: Random): TestCar {
  const first = random.between(3.0, 3.9);
  const spread = random.between(0.66, 0.76);
  const count = random.int(5, 6);
  return {
    mass: random.between(1050, 1750),
    // Steps shrink towards the top.
    gearRatios: Array.from({ length: count }, (_, i) => first * spread ** (i * (1 - 0.035 * i))),
    finalDrive: random.between(3.2, 4.4),
    rollingRadius: random.between(0.29, 0.34),
    dragArea: random.between(0.6, 0.8),
    rollingCoefficient: random.between(0.009, 0.014),
    efficiency: random.between(0.84, 0.92),
    torque: random.between(110, 190),
    fullBoost: random.between(0.5e5, 1.8e5),
    spoolRpm: random.between(2300, 3600),
    limiterRpm: random.between(6300, 7200),
    turboLag: random.between(0.15, 0.5),
  };
}

/** Drives the acts one after another and keeps the truth. */
export class Driver {
  readonly drive: Drive;
  readonly #car: TestCar;
  #speed = 0;
  #rpm = idleRpm;
  #pedal = 0;
  #boost = 0;
  #gear = 0;
  #manifold = 0;
  #spin = 0;
  #t = 0;

  constructor(car: TestCar, step = 0.002) {
    this.#car = car;
    this.drive = {
      step,
      time: [],
      rpm: [],
      speed: [],
      pedal: [],
      boost: [],
      gear: [],
      isSpinning: [],
      pulls: [],
    };
  }

  run(acts: readonly Act[]): Drive {
    for (const act of acts) this.#act(act);
    return this.drive;
  }

  #act(act: Act): void {
    switch (act.kind) {
      case 'idle':
        this.#coast(0, act.seconds);
        break;
      case 'cruise':
        this.#cruise(act.gear, act.rpm, act.seconds);
        break;
      case 'part':
        this.#settle(act.gear, act.fromRpm);
        this.#rampTo(act.pedal, 0.4);
        this.#until(() => this.#rpm >= act.toRpm, 15);
        this.#rampTo(0.1, 0.3);
        break;
      case 'stab':
        this.#settle(act.gear, 2600);
        this.#rampTo(1, 0.12);
        this.#for(act.seconds);
        this.#rampTo(0.15, 0.12);
        break;
      case 'pull':
        this.#pull(act);
        break;
    }
  }

  #pull(act: Extract<Act, { kind: 'pull' }>): void {
    this.#settle(act.gear, act.fromRpm);
    this.#rampTo(1, act.rampIn);
    let start = this.#t;
    const top = Math.min(act.toRpm, this.#car.limiterRpm);
    const from = this.#rpm;
    let hasSpun = act.spinAt === undefined;
    this.#until(() => {
      if (!hasSpun && this.#rpm > from + (act.spinAt ?? 0) * (top - from)) {
        hasSpun = true;
        this.#spin = 0.35;
      }
      // Shorter than this no tuner would call it a pull.
      return this.#rpm >= top - 1 && this.#t - start >= 1;
    }, 30);
    if (act.onLimiter) this.#for(act.onLimiter);
    const isAborted = act.toRpm < 0.75 * this.#car.limiterRpm;
    if (act.thenShiftTo !== undefined && act.gear < this.#car.gearRatios.length) {
      this.#note(start, act.gear, false, 'shift');
      if (act.isAutomatic) this.#shift(act.gear + 1, 0.25, 1);
      else {
        this.#rampTo(0, 0.08);
        this.#shift(act.gear + 1, 0.35, 0);
        this.#rampTo(1, act.rampIn);
      }
      start = this.#t;
      const after = this.#rpm;
      this.#until(
        () => this.#rpm >= Math.max(act.thenShiftTo ?? 0, after + 500) && this.#t - start >= 1.2,
        30,
      );
      this.#note(start, act.gear + 1, false, 'lift');
    } else this.#note(start, act.gear, isAborted, 'lift');
    this.#rampTo(0, act.rampOut);
    this.#for(0.5);
  }

  #note(start: number, gear: number, isAborted: boolean, ends: TruePull['ends']): void {
    this.drive.pulls.push({ start, end: this.#t - this.drive.step, gear, isAborted, ends });
  }

  /** Brings the car to a steady engine speed in a gear; the log does not care how the time passes. */
  #settle(gear: number, rpm: number): void {
    const target = this.#speedAt(gear, rpm);
    if (this.#gear !== gear) this.#shift(gear, 0.4, 0);
    // Brake or push gently at part throttle until there.
    let guard = 0;
    while (Math.abs(this.#speed - target) > 0.3 && guard++ < 40_000) {
      const wanted = this.#speed < target ? 0.32 : 0;
      this.#pedal += Math.sign(wanted - this.#pedal) * Math.min(Math.abs(wanted - this.#pedal), 0.004);
      this.#advance(this.#speed > target ? -2.5 : 0);
    }
    this.#cruise(gear, rpm, 1.5);
  }

  #cruise(gear: number, rpm: number, seconds: number): void {
    if (this.#gear !== gear) this.#shift(gear, 0.4, 0);
    const target = this.#speedAt(gear, rpm);
    const until = this.#t + seconds;
    while (this.#t < until) {
      const wanted = Math.max(0, Math.min(0.5, 0.15 + 0.25 * (target - this.#speed)));
      this.#pedal += Math.max(-0.002, Math.min(0.002, wanted - this.#pedal));
      this.#advance(this.#speed > target + 1 ? -1.5 : 0);
    }
  }

  #coast(pedal: number, seconds: number): void {
    this.#rampTo(pedal, 0.2);
    this.#for(seconds);
  }

  #rampTo(pedal: number, seconds: number): void {
    const from = this.#pedal;
    const steps = Math.max(1, Math.round((seconds * Math.abs(pedal - from)) / this.drive.step));
    for (let i = 1; i <= steps; i++) {
      this.#pedal = from + ((pedal - from) * i) / steps;
      this.#advance(0);
    }
  }

  #for(seconds: number): void {
    const until = this.#t + seconds;
    while (this.#t < until) this.#advance(0);
  }

  #until(isDone: () => boolean, longest: number): void {
    const until = this.#t + longest;
    while (!isDone() && this.#t < until) this.#advance(0);
  }

  #speedAt(gear: number, rpm: number): number {
    const { gearRatios, finalDrive, rollingRadius } = this.#car;
    return (((rpm * Math.PI) / 30) * rollingRadius) / ((gearRatios[gear - 1] ?? 1) * finalDrive);
  }

  #rpmAt(gear: number, speed: number): number {
    return Math.max(idleRpm, (speed / this.#speedAt(gear, 1000)) * 1000);
  }

  /** Clutch open, engine speed goes to where the new gear wants it, clutch closed. */
  #shift(gear: number, seconds: number, pedal: number): void {
    const from = this.#rpm;
    const steps = Math.max(1, Math.round(seconds / this.drive.step));
    if (pedal < 1) this.#pedal = pedal;
    for (let i = 1; i <= steps; i++) {
      this.#coastStep(-0.3);
      const to = this.#rpmAt(gear, this.#speed);
      const share = i / steps;
      this.#rpm = from + (to - from) * (3 * share ** 2 - 2 * share ** 3);
      this.#gear = share > 0.5 ? gear : 0;
      this.#record();
    }
    this.#gear = gear;
  }

  #coastStep(acceleration: number): void {
    this.#speed = Math.max(0, this.#speed + acceleration * this.drive.step);
    this.#boost += ((0 - this.#boost) * this.drive.step) / 0.2;
  }

  #advance(brake: number): void {
    const car = this.#car;
    const { step } = this.drive;
    const open = 1 - (1 - Math.max(0, Math.min(1, this.#pedal))) ** 2.2;
    const spool = Math.min(1, Math.max(0, (this.#rpm - 1200) / (car.spoolRpm - 1200)) ** 1.5);
    this.#boost += ((car.fullBoost * spool * open ** 2 - this.#boost) * step) / car.turboLag;
    if (this.#gear === 0) {
      this.#coastStep(brake);
      this.#rpm = Math.max(idleRpm, this.#rpm - 900 * step);
    } else {
      const shape = 1 - 0.16 * ((this.#rpm - 4300) / 2500) ** 2;
      const isCut = this.#rpm >= car.limiterRpm;
      const engine = isCut
        ? -30
        : car.torque * shape * open * (1 + (0.85 * this.#boost) / 1e5) - 12 - this.#rpm * 0.004;
      const ratio = (car.gearRatios[this.#gear - 1] ?? 1) * car.finalDrive;
      const drag =
        0.5 * airDensity * car.dragArea * this.#speed ** 2 +
        car.rollingCoefficient * car.mass * gravity * Math.min(1, this.#speed);
      const inertia = car.mass + 40 + (0.22 * ratio ** 2) / car.rollingRadius ** 2;
      const acceleration =
        ((engine * ratio * (engine > 0 ? car.efficiency : 1)) / car.rollingRadius - drag) / inertia + brake;
      this.#speed = Math.max(0, this.#speed + acceleration * step);
      // Spin builds up and dies away within the time left of it.
      this.#spin = Math.max(0, this.#spin - step);
      const slip = 0.02 + 0.12 * Math.sin((Math.PI * this.#spin) / 0.35);
      this.#rpm = this.#rpmAt(this.#gear, this.#speed) * (this.#spin > 0 ? 1 + slip - 0.02 : 1);
    }
    this.#record();
  }

  #record(): void {
    const d = this.drive;
    this.#t += d.step;
    d.time.push(this.#t);
    d.rpm.push(this.#rpm);
    d.speed.push(this.#speed);
    d.pedal.push(this.#pedal);
    // Behind the plate: full from 70 % of the pedal, two thirds of a vacuum when shut.
    const passed = Math.min(1, 0.32 + (0.68 * this.#pedal) / 0.7);
    const manifold = (101_325 + this.#boost) * passed - 101_325;
    this.#manifold += ((manifold - this.#manifold) * d.step) / 0.03;
    d.boost.push(this.#manifold);
    d.gear.push(this.#gear);
    d.isSpinning.push(this.#spin > 0);
  }
}
