import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { CarInput } from '../core/session/index.ts';
import { sessionFolder } from './session-folder.ts';
import { air, airDensity, scatter, usual } from './simulation/day.ts';
import { drive } from './simulation/drive.ts';
import { engine, hatch, spray } from './simulation/hatch.ts';
import { looseLogger, plainLogger, record } from './simulation/logger.ts';
import { type Outing, outing } from './simulation/outing.ts';
import { type Chapter, looseStory, story } from './simulation/story.ts';
import { band_rpm, bandMean, consumption, curveOf, grid_rpm, meanCurve, round } from './simulation/truth.ts';
import type { Tune } from './simulation/tune.ts';

/**
 * The first seed from 20270314 on whose day is unremarkable: no entry's true mean differs from what its change is
 * worth by more than one standard error. A truth outside an interval is then the judge's fault, not the day's.
 */
export const sampleSeed = 20270323;

/** The car as a tuner would type it: what was weighed, read off a plate or measured, nothing the truth alone knows. */
export const car: CarInput = {
  name: hatch.name,
  mass_kg: hatch.mass,
  massUncertainty_kg: 15,
  gearRatios: [...hatch.gearRatios],
  finalDrive: hatch.finalDrive,
  rollingRadius_m: hatch.rollingRadius,
  pullGear: hatch.gear,
  wheelInertia_kg_m2: hatch.wheelInertia,
  engineInertia_kg_m2: hatch.engineInertia,
  dragArea_m2: hatch.dragArea,
  rollingCoefficient: hatch.rollingCoefficient,
  drivetrainEfficiency: hatch.drivetrainEfficiency,
  correction: 'none',
};

export const conditions = {
  place: 'road',
  ambient_C: round(air.temperature - 273.15, 2),
  barometer_kPa: air.pressure / 1000,
  relativeHumidity_percent: air.relativeHumidity * 100,
  grade_percent: 0,
} as const;

const kW = (curve: readonly (number | null)[]) => curve.map((w) => (w === null ? null : round(w / 1000, 3)));

/** One pull of this tune without luck, noise or wandering: what the tune is worth. */
function nominal(tune: Tune) {
  const trace = drive(
    tune,
    [
      { kind: 'cruise', seconds: 3, luck: usual },
      { kind: 'pull', luck: usual },
    ],
    0,
    null,
  );
  const wheel = curveOf(trace, 0, 'wheelPower');
  return { trace, wheel, mean: bandMean(wheel) };
}

function tuneFacts(tune: Tune) {
  return {
    boostTarget_kPa: tune.boostTarget / 1000,
    loadedSpark_deg: tune.loadedSpark_deg,
    lambdaTarget: tune.lambdaTarget,
    isSprayOn: tune.isSprayOn,
  };
}

function pullFacts(drivenOuting: Outing, logged: readonly { start_s: number; end_s: number }[]) {
  return drivenOuting.pulls.map(({ trace, index, luck }, i) => {
    const { fluid_mL, fluidOverFuel } = consumption(trace, index);
    const pull = trace.pulls[index] ?? { from: 0, to: 1 };
    const speed = trace.fields.engineSpeed_rpm;
    return {
      start_s: round(logged[i]?.start_s ?? Number.NaN, 3),
      end_s: round(logged[i]?.end_s ?? Number.NaN, 3),
      gear: hatch.gear,
      rpmFrom: round(speed[pull.from] ?? 0, 0),
      rpmTo: round(speed[pull.to - 1] ?? 0, 0),
      fluid_mL: round(fluid_mL, 1),
      fluidOverFuel: round(fluidOverFuel, 3),
      headwind_m_s: round(luck.headwind, 3),
      boostOffset_kPa: round(luck.boostOffset / 1000, 3),
    };
  });
}

function chapterFiles(chapter: Chapter, seed: number, put: (path: string, text: string) => void) {
  const wheel: (number | null)[][] = [];
  const enginePower: (number | null)[][] = [];
  const files = chapter.files.map(({ name, pulls, isPaused }) => {
    const driven = outing(chapter.tune, { count: pulls, isPaused }, seed, name);
    const { text, pulls: logged } = record(plainLogger, driven.sections, seed, name);
    put(`logs/${name}`, text);
    for (const { trace, index } of driven.pulls) {
      wheel.push(curveOf(trace, index, 'wheelPower'));
      enginePower.push(curveOf(trace, index, 'enginePower'));
    }
    return { file: name, pulls: pullFacts(driven, logged) };
  });
  return { files, wheel: meanCurve(wheel), engine: meanCurve(enginePower) };
}

/** Effect of going from one tune to another at the usual luck, over the band. */
function effect(before: Tune, after: Tune) {
  const [a, b] = [nominal(before), nominal(after)];
  return {
    effect_kW: round((b.mean - a.mean) / 1000, 3),
    effect_percent: round((b.mean / a.mean - 1) * 100, 3),
    delta_kW: kW(b.wheel.map((w, i) => (w === null ? null : w - (a.wheel[i] ?? Number.NaN)))),
  };
}

/** Every file of the sample logs with its text, by path below sample-sessions. Same seed, same bytes. */
export function generateLogs(seed: number = sampleSeed): ReadonlyMap<string, string> {
  const out = new Map<string, string>();
  const put = (path: string, text: string) => out.set(path, text);
  const json = (value: unknown) =>
    // Number lists on one line: a curve is read across, not down.
    `${JSON.stringify(value, null, 2).replace(/\[[^[\]{}"]*\]/g, (list) => list.replace(/\s+/g, ' '))}\n`;

  const entries = story.map((chapter, index) => {
    const { files, wheel, engine: crank } = chapterFiles(chapter, seed, put);
    const before = story[index - 1];
    return {
      id: chapter.id,
      kind: chapter.kind,
      change: chapter.change,
      tune: tuneFacts(chapter.tune),
      files,
      wheelPower_kW: kW(wheel),
      enginePower_kW: kW(crank),
      nominalWheelPower_kW: kW(nominal(chapter.tune).wheel),
      bandMean_kW: round(bandMean(wheel) / 1000, 3),
      ...(before
        ? {
            against: before.id,
            declared: effect(before.tune, chapter.declaredTune),
            total: effect(before.tune, chapter.tune),
            isConfounded: chapter.tune !== chapter.declaredTune,
            expectedVerdicts: chapter.expected,
          }
        : {}),
    };
  });

  const loose = looseStory.map((item) => {
    const options = { count: item.pulls, isPaused: true, liftFirstAt_rpm: item.lifted_rpm };
    const driven = outing(item.tune, options, seed, item.name);
    const { text, pulls } = record(looseLogger, driven.sections, seed, item.name);
    put(`loose-logs/${item.name}`, text);
    const whole = driven.pulls.filter((_, i) => !(i === 0 && item.lifted_rpm));
    return {
      file: item.name,
      tune: tuneFacts(item.tune),
      pulls: pullFacts(driven, pulls).map((facts, i) => ({
        ...facts,
        isLifted: i === 0 && item.lifted_rpm !== null,
      })),
      wheelPower_kW: kW(meanCurve(whole.map(({ trace, index }) => curveOf(trace, index, 'wheelPower')))),
      nominalWheelPower_kW: kW(nominal(item.tune).wheel),
    };
  });

  put('car.json', json({ ...car, conditions }));
  put(
    'truth.json',
    json({
      about:
        'Invented. What the generator put into the logs beside this file; nothing here was measured on a car.',
      seed,
      definitions: {
        pull: 'First logged row with pedal and throttle full, last logged row before the lift; the clock of the file.',
        wheelPower:
          'Power at the wheels at road speed: moves the mass with its wheels, the air and the rolling tyres; engine inertia and driveline loss are already paid.',
        enginePower:
          'Torque at the clutch side of the crank, engine inertia not yet paid, times engine speed.',
        nominal: 'One pull without luck, wind, noise or wandering boost.',
        effect:
          'Nominal after minus nominal before, mean over the engine speeds of the band by trapezoids. declared: only the declared change made; total: as really driven.',
      },
      grid_rpm,
      band_rpm,
      entries,
      looseLogs: loose,
      car: { ...car, slipAtRest: hatch.slipAtRest, slipPerNewton: hatch.slipPerNewton },
      engine,
      spray,
      air: { ...air, density_kg_m3: round(airDensity, 4) },
      usual,
      scatter,
    }),
  );
  return out;
}

/** The logs, the truth and the session folder made of them. */
export function generateSamples(seed: number = sampleSeed): ReadonlyMap<string, string> {
  const logs = generateLogs(seed);
  return new Map([...logs, ...sessionFolder(story, logs, car, conditions)]);
}

async function writeSamples(folder: string): Promise<void> {
  for (const [path, text] of generateSamples()) {
    const target = join(folder, path);
    await mkdir(dirname(target), { recursive: true });
    await writeFile(target, text);
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await writeSamples(dirname(fileURLToPath(import.meta.url)));
}
