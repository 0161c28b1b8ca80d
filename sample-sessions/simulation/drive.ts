import { air, airDensity, type PullLuck } from './day.ts';
import { clamp, knockSpark_deg, workOf } from './engine.ts';
import { engine, hatch, spray } from './hatch.ts';
import { type Random, randomOf, wander } from './random.ts';
import { type Trace, traceBuilder } from './trace.ts';
import { boostTargetAt, lambdaTargetAt, sparkAt, type Tune } from './tune.ts';

const step = 1e-3;
const gravity = 9.80665;

/** What the driver does next. A pull opens the throttle from a cruise and lifts at the pull's own speed. */
export type Phase =
  | { readonly kind: 'cruise'; readonly seconds: number; readonly luck: PullLuck }
  | { readonly kind: 'pull'; readonly luck: PullLuck; readonly liftEarly_rpm?: number }
  | { readonly kind: 'coast'; readonly seconds: number }
  | { readonly kind: 'slow'; readonly luck: PullLuck };

/** First-order lag: the part of the way that is gone after one step. */
const lag = (timeConstant: number) => step / timeConstant;

/** Noise of the engine itself, as against that of the sensors. None for the nominal pull. */
type Unrest = { readonly boost: () => number; readonly lambda: () => number; readonly trim: () => number };

function unrestOf(random: Random | null): Unrest {
  if (!random) return { boost: () => 0, lambda: () => 0, trim: () => 0 };
  const boost = wander(random, 350, 0.35);
  const lambda = wander(random, 0.004, 0.25);
  const trim = wander(random, 0.006, 0.5);
  return { boost: () => boost(step), lambda: () => lambda(step), trim: () => trim(step) };
}

/**
 * Drives the phases with one tune, in steps of a millisecond.
 *
 *   m_eff a = T i eta / r - F_air - F_roll,  m_eff = m + I_w / r^2 + I_e i^2 eta / r^2
 *
 * The driven tyre runs ahead of the road by a slip that grows with the tractive force, so engine speed is a
 * little more than the gear says. `wheelPower` is what arrives at the wheels, taken at road speed: it moves the
 * mass with its wheels, the air and the tyres. `enginePower` is torque at the clutch times engine speed.
 */
export function drive(tune: Tune, phases: readonly Phase[], seed: number, label: string | null): Trace {
  const ratio = (hatch.gearRatios[hatch.gear - 1] ?? 1) * hatch.finalDrive;
  const perMetre = ratio / hatch.rollingRadius;
  const effectiveMass =
    hatch.mass +
    hatch.wheelInertia / hatch.rollingRadius ** 2 +
    hatch.engineInertia * perMetre ** 2 * hatch.drivetrainEfficiency;
  const roadSpeed = (rpm: number) => (rpm * Math.PI) / 30 / perMetre;
  const unrest = unrestOf(label === null ? null : randomOf(seed, `${label}/unrest`));
  const trace = traceBuilder();
  const pulls: { from: number; to: number }[] = [];

  const first = phases.find((p) => p.kind === 'cruise');
  if (first?.kind !== 'cruise') throw new Error('a drive begins with a cruise');
  let luck = first.luck;
  const s = {
    time: 0,
    speed: roadSpeed(luck.startSpeed_rpm),
    slip: 0.003,
    pedal: 0.072,
    throttle: 0.072,
    pressure: 30e3,
    pressureRate: 0,
    soak: luck.soak,
    charge: air.temperature + luck.soak + 1,
    sensor: air.temperature + luck.soak + 4,
    exhaust: 800,
    coolant: luck.coolant,
    lambda: 1,
    lambdaSeen: 1,
    retard: 0,
    fluid: 0,
    valve: [] as number[],
  };

  /** One millisecond with the pedal where it is; returns its index in the trace. */
  function advance(brake: number): number {
    const rpm = ((s.speed * perMetre * 30) / Math.PI) * (1 + s.slip);
    s.throttle += clamp(s.pedal - s.throttle, -9 * step, 9 * step);

    // Part throttle holds the manifold below the outside; beyond, the turbocharger takes over with its own lag.
    const target = boostTargetAt(tune, rpm) + luck.boostOffset + unrest.boost();
    const reach = 1.35e5 * clamp((rpm - 1500) / 1300, 0, 1);
    const isOpen = s.throttle > 0.75;
    const wanted = isOpen
      ? air.pressure - 3e3 + Math.min(target + 3e3, reach)
      : air.pressure * (0.2 + 0.78 * clamp(s.throttle / 0.75, 0, 1) ** 0.9);
    if (isOpen && s.pressure > air.pressure * 0.93) {
      const w = 2.6 + 3.4 * clamp((rpm - 2300) / 1700, 0, 1);
      s.pressureRate += (w * w * (wanted - s.pressure) - 2 * 0.82 * w * s.pressureRate) * step;
      s.pressure += s.pressureRate * step;
    } else {
      const goal = isOpen ? air.pressure * 0.96 : wanted;
      s.pressure += (goal - s.pressure) * lag(0.05);
      s.pressureRate = 0;
    }
    const boost = s.pressure - air.pressure;

    // Compressor at 70 %, cooler at 78 %; the cooler itself warms under load and cools while cruising.
    const pressureRatio = Math.max(1, (s.pressure + 8e3) / (air.pressure - 2e3));
    const outlet = air.temperature * (1 + (pressureRatio ** 0.2857 - 1) / 0.7);
    s.soak += boost > 20e3 ? 0.45 * step : (luck.soak - s.soak) * lag(12);
    s.charge += (air.temperature + 0.22 * (outlet - air.temperature) + s.soak - s.charge) * lag(0.4);
    s.coolant += ((boost > 20e3 ? luck.coolant + 3 : luck.coolant) - s.coolant) * lag(14);

    const isSpraying = tune.isSprayOn && s.throttle > 0.5;
    const duty = isSpraying
      ? clamp((boost - spray.startBoost) / (spray.fullBoost - spray.startBoost), 0, 1)
      : 0;
    s.valve.push(duty);
    const arrived = s.valve.length > spray.delay / step ? (s.valve.shift() ?? 0) : 0;
    const pump = tune.isSprayOn ? spray.pumpPressure - 0.6e5 * duty : 0;
    const difference = Math.max(0, pump - Math.max(0, boost) - spray.checkValve);
    const full =
      spray.nozzleFlow * Math.sqrt((difference / spray.nozzleRatedDifference) * (998 / spray.density));
    s.fluid += (arrived * full * (1 + luck.fluid) - s.fluid) * lag(spray.rise);

    const lambdaTarget = lambdaTargetAt(tune, s.pressure);
    s.lambda += (lambdaTarget + unrest.lambda() - s.lambda) * lag(0.1);
    const mapped = sparkAt(tune, rpm, boost);
    const spark = mapped - s.retard;
    const isOverrun = s.throttle < 0.03 && rpm > 1600;
    const work = workOf({
      engineSpeed_rpm: rpm,
      manifoldPressure: s.pressure,
      ambientPressure: air.pressure,
      chargeTemperature: s.charge,
      lambda: s.lambda,
      sparkAdvance_deg: spark,
      fluid: s.fluid * spray.density,
    });
    const knock = knockSpark_deg(rpm, boost, s.charge, work.fluidRatio);
    s.retard = boost > 30e3 && spark > knock ? Math.min(6, s.retard + 1) : Math.max(0, s.retard - 1.2 * step);
    const drag = isOverrun ? -(18 + 4e-3 * rpm) : work.torque * (1 + luck.combustion);

    const airForce = 0.5 * airDensity * hatch.dragArea * (s.speed + luck.headwind) ** 2;
    const rollForce = hatch.rollingCoefficient * hatch.mass * gravity;
    const drivenForce = (drag * ratio * hatch.drivetrainEfficiency) / hatch.rollingRadius;
    const acceleration = (drivenForce - airForce - rollForce - brake * hatch.mass) / effectiveMass;
    const engineShare = hatch.engineInertia * perMetre ** 2 * hatch.drivetrainEfficiency * acceleration;
    const wheelForce = drivenForce - engineShare;
    // The tyre takes about 30 ms to build its slip.
    s.slip += (hatch.slipAtRest + hatch.slipPerNewton * Math.max(0, wheelForce) - s.slip) * lag(0.03);

    const exhaustTarget = isOverrun
      ? 720
      : boost > 0
        ? 1115 +
          0.9 * (rpm - 4000) * 0.02 +
          420 * (s.lambda - 0.84) -
          260 * work.fluidRatio -
          7 * (spark - mapped)
        : 800;
    s.exhaust += (exhaustTarget - s.exhaust) * lag(2.4);
    s.sensor += (s.charge - spray.seenBySensor * work.sprayCooling - s.sensor) * lag(0.8);
    s.lambdaSeen += ((isOverrun ? 1.6 : s.lambda) - s.lambdaSeen) * lag(0.12);

    const index = trace.add({
      time: s.time,
      engineSpeed_rpm: rpm,
      speed: s.speed,
      acceleration,
      pedal: s.pedal,
      throttle: s.throttle,
      manifoldPressure: s.pressure,
      boostTarget: isOpen ? boostTargetAt(tune, rpm) : 0,
      sparkAdvance_deg: spark,
      knockRetard_deg: s.retard,
      lambda: s.lambdaSeen,
      lambdaTarget,
      intakeTemperature: s.sensor,
      coolantTemperature: s.coolant,
      exhaustTemperature: s.exhaust,
      airFlow: work.airFlow,
      fuelFlow: isOverrun ? 0 : work.fuelFlow,
      injectorDuty: isOverrun ? 0 : work.fuelFlow / engine.injectorStatic,
      fuelPressure: 3e5 + boost,
      fuelTrim: isOverrun ? 0 : work.trim + unrest.trim(),
      fluidFlow: s.fluid,
      fluidPressure: pump,
      batteryVoltage: 14.05 - (tune.isSprayOn ? 0.15 + 0.1 * duty : 0),
      wheelPower: wheelForce * s.speed,
      enginePower: (drag * rpm * Math.PI) / 30,
    });
    s.speed += acceleration * step;
    s.time += step;
    return index;
  }

  /** The driver holds a speed: feed-forward and a gentle correction. */
  const hold = (target: number) => {
    s.pedal = clamp(0.072 + 0.12 * (target - s.speed), 0.03, 0.3);
  };

  for (const phase of phases) {
    if (phase.kind === 'cruise') {
      luck = phase.luck;
      for (let t = 0; t < phase.seconds; t += step) {
        hold(roadSpeed(luck.startSpeed_rpm));
        advance(0);
      }
    } else if (phase.kind === 'pull') {
      const lift = phase.liftEarly_rpm ?? luck.liftSpeed_rpm;
      const range = { from: -1, to: -1 };
      for (;;) {
        s.pedal = Math.min(1, s.pedal + step / 0.25);
        const index = advance(0);
        if (range.from < 0 && s.throttle >= 1) range.from = index;
        range.to = index + 1;
        if (((s.speed * perMetre * 30) / Math.PI) * (1 + s.slip) >= lift) break;
      }
      pulls.push(range);
    } else if (phase.kind === 'coast') {
      for (let t = 0; t < phase.seconds; t += step) {
        s.pedal = Math.max(0, s.pedal - step / 0.2);
        advance(0);
      }
    } else {
      luck = phase.luck;
      while (s.speed > roadSpeed(luck.startSpeed_rpm)) {
        s.pedal = Math.max(0, s.pedal - step / 0.2);
        advance(2.2);
      }
    }
  }
  return trace.build(pulls);
}
