import { breathing } from './breathing.ts';
import { air, airDensity, type PullLuck } from './day.ts';
import { clamp, knockSpark_deg, workOf } from './engine.ts';
import { engine, hatch, spray } from './hatch.ts';
import { type Random, randomOf, wander } from './random.ts';
import { spraySystem } from './spray-system.ts';
import { lag, step } from './step.ts';
import { type Trace, traceBuilder } from './trace.ts';
import { boostTargetAt, lambdaTargetAt, sparkAt, type Tune } from './tune.ts';

/** What the driver does next. A pull opens the throttle from a cruise and lifts at the pull's own speed. */
export type Phase =
  | { readonly kind: 'cruise'; readonly seconds: number; readonly luck: PullLuck }
  | { readonly kind: 'pull'; readonly luck: PullLuck; readonly liftEarly_rpm?: number }
  | { readonly kind: 'coast'; readonly seconds: number }
  | { readonly kind: 'slow'; readonly luck: PullLuck };

const ratio = (hatch.gearRatios[hatch.gear - 1] ?? 1) * hatch.finalDrive;
const perMetre = ratio / hatch.rollingRadius;
const effectiveMass =
  hatch.mass +
  hatch.wheelInertia / hatch.rollingRadius ** 2 +
  hatch.engineInertia * perMetre ** 2 * hatch.drivetrainEfficiency;
const rollForce = hatch.rollingCoefficient * hatch.mass * 9.80665;
const roadSpeed = (rpm: number) => (rpm * Math.PI) / 30 / perMetre;

/** Wandering of the engine itself, as against noise of the sensors. None for the nominal pull. */
type Unrest = { readonly boost: () => number; readonly lambda: () => number; readonly trim: () => number };

function unrestOf(random: Random | null): Unrest {
  if (!random) return { boost: () => 0, lambda: () => 0, trim: () => 0 };
  const boost = wander(random, 350, 0.35);
  const lambda = wander(random, 0.004, 0.25);
  const trim = wander(random, 0.006, 0.5);
  return { boost: () => boost(step), lambda: () => lambda(step), trim: () => trim(step) };
}

/** Where the exhaust gas sensor would settle [K]: richer and sprayed is cooler, retarded spark hotter. */
function exhaustOf(
  rpm: number,
  boost: number,
  lambda: number,
  fluidRatio: number,
  retarded_deg: number,
): number {
  if (boost <= 0) return 800;
  return 1115 + 0.018 * (rpm - 4000) + 420 * (lambda - 0.84) - 260 * fluidRatio + 7 * retarded_deg;
}

/** The car, advanced one millisecond at a time with the pedal where the driver holds it. */
function rollingCar(tune: Tune, first: PullLuck, unrest: Unrest) {
  const trace = traceBuilder();
  const breathe = breathing(first);
  const sprayNow = spraySystem();
  const s = {
    luck: first,
    time: 0,
    speed: roadSpeed(first.startSpeed_rpm),
    slip: 0.003,
    pedal: 0.072,
    throttle: 0.072,
    sensor: air.temperature + first.soak + 4,
    exhaust: 800,
    coolant: first.coolant,
    lambda: 1,
    lambdaSeen: 1,
    retard: 0,
  };
  const engineSpeed_rpm = () => ((s.speed * perMetre * 30) / Math.PI) * (1 + s.slip);

  /** One step; returns its index in the trace. `brake` slows the car [m/s^2]. */
  function advance(brake: number): number {
    const { luck } = s;
    const rpm = engineSpeed_rpm();
    s.throttle += clamp(s.pedal - s.throttle, -9 * step, 9 * step);
    const target = boostTargetAt(tune, rpm) + luck.boostOffset + unrest.boost();
    const { pressure, boost, charge, isOpen } = breathe(s.throttle, rpm, target, luck);
    const fluid = sprayNow(tune.isSprayOn, s.throttle, boost, luck.fluid);

    const lambdaTarget = lambdaTargetAt(tune, pressure);
    s.lambda += (lambdaTarget + unrest.lambda() - s.lambda) * lag(0.1);
    const mapped = sparkAt(tune, rpm, boost);
    const spark = mapped - s.retard;
    const isOverrun = s.throttle < 0.03 && rpm > 1600;
    const work = workOf({
      engineSpeed_rpm: rpm,
      manifoldPressure: pressure,
      ambientPressure: air.pressure,
      chargeTemperature: charge,
      lambda: s.lambda,
      sparkAdvance_deg: spark,
      fluid: fluid.flow * spray.density,
    });
    const knock = knockSpark_deg(rpm, boost, charge, work.fluidRatio);
    s.retard = boost > 30e3 && spark > knock ? Math.min(6, s.retard + 1) : Math.max(0, s.retard - 1.2 * step);
    // On the overrun the fuel is cut and the engine brakes.
    const torque = isOverrun ? -(18 + 4e-3 * rpm) : work.torque * (1 + luck.combustion);

    const airForce = 0.5 * airDensity * hatch.dragArea * (s.speed + luck.headwind) ** 2;
    const drivenForce = (torque * ratio * hatch.drivetrainEfficiency) / hatch.rollingRadius;
    const acceleration = (drivenForce - airForce - rollForce - brake * hatch.mass) / effectiveMass;
    const engineShare = hatch.engineInertia * perMetre ** 2 * hatch.drivetrainEfficiency * acceleration;
    const wheelForce = drivenForce - engineShare;
    // The tyre takes about 30 ms to build its slip.
    s.slip += (hatch.slipAtRest + hatch.slipPerNewton * Math.max(0, wheelForce) - s.slip) * lag(0.03);

    const exhaust = isOverrun ? 720 : exhaustOf(rpm, boost, s.lambda, work.fluidRatio, mapped - spark);
    s.exhaust += (exhaust - s.exhaust) * lag(2.4);
    s.sensor += (charge - spray.seenBySensor * work.sprayCooling - s.sensor) * lag(0.8);
    s.coolant += ((boost > 20e3 ? luck.coolant + 3 : luck.coolant) - s.coolant) * lag(14);
    s.lambdaSeen += ((isOverrun ? 1.6 : s.lambda) - s.lambdaSeen) * lag(0.12);

    const index = trace.add({
      time: s.time,
      engineSpeed_rpm: rpm,
      speed: s.speed,
      acceleration,
      pedal: s.pedal,
      throttle: s.throttle,
      manifoldPressure: pressure,
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
      fluidFlow: fluid.flow,
      fluidPressure: fluid.pressure,
      batteryVoltage: 14.05 - (tune.isSprayOn ? 0.15 + 0.1 * fluid.duty : 0),
      wheelPower: wheelForce * s.speed,
      enginePower: (torque * rpm * Math.PI) / 30,
    });
    s.speed += acceleration * step;
    s.time += step;
    return index;
  }
  return { state: s, trace, engineSpeed_rpm, advance };
}

/**
 * Drives the phases with one tune, in steps of a millisecond; without a label nothing wanders.
 *
 *   m_eff a = T i eta / r - F_air - F_roll,  m_eff = m + I_w / r^2 + I_e i^2 eta / r^2
 *
 * The driven tyre runs ahead of the road by a slip that grows with the tractive force, so engine speed is a
 * little more than the gear says. `wheelPower` is what arrives at the wheels, taken at road speed: it moves the
 * mass with its wheels, the air and the tyres. `enginePower` is torque at the clutch times engine speed.
 */
export function drive(tune: Tune, phases: readonly Phase[], seed: number, label: string | null): Trace {
  const first = phases[0];
  if (first?.kind !== 'cruise') throw new Error('a drive begins with a cruise');
  const car = rollingCar(
    tune,
    first.luck,
    unrestOf(label === null ? null : randomOf(seed, `${label}/unrest`)),
  );
  const { state } = car;
  const pulls: { from: number; to: number }[] = [];
  const press = (seconds: number) => {
    state.pedal = Math.min(1, state.pedal + step / seconds);
  };
  const release = (seconds: number) => {
    state.pedal = Math.max(0, state.pedal - step / seconds);
  };

  for (const phase of phases) {
    if (phase.kind === 'cruise') {
      state.luck = phase.luck;
      for (let t = 0; t < phase.seconds; t += step) {
        // The driver holds the speed: feed-forward and a gentle correction.
        const slow = roadSpeed(state.luck.startSpeed_rpm) - state.speed;
        state.pedal = clamp(0.072 + 0.12 * slow, 0.03, 0.3);
        car.advance(0);
      }
    } else if (phase.kind === 'pull') {
      const lift = phase.liftEarly_rpm ?? state.luck.liftSpeed_rpm;
      const range = { from: -1, to: -1 };
      do {
        press(0.25);
        const index = car.advance(0);
        if (range.from < 0 && state.throttle >= 1) range.from = index;
        range.to = index + 1;
      } while (car.engineSpeed_rpm() < lift);
      pulls.push(range);
    } else if (phase.kind === 'coast') {
      for (let t = 0; t < phase.seconds; t += step) {
        release(0.2);
        car.advance(0);
      }
    } else {
      state.luck = phase.luck;
      while (state.speed > roadSpeed(state.luck.startSpeed_rpm)) {
        release(0.2);
        car.advance(2.2);
      }
    }
  }
  return car.trace.build(pulls);
}
