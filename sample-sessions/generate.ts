import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { sessionFolder } from './session-folder.ts';
import { car, conditions } from './simulation/as-typed.ts';
import { air, airDensity, scatter, usual } from './simulation/day.ts';
import { effect, kW, nominal, pullFacts, tuneFacts } from './simulation/facts.ts';
import { engine, hatch, spray } from './simulation/hatch.ts';
import { looseLogger, record } from './simulation/logger.ts';
import { outing } from './simulation/outing.ts';
import { recordChapter } from './simulation/recorded.ts';
import { setupAsTyped } from './simulation/setup-as-typed.ts';
import { type Chapter, looseStory, story } from './simulation/story.ts';
import type { TraceField } from './simulation/trace.ts';
import { band_rpm, bandMean, curveOf, grid_rpm, meanCurve, round } from './simulation/truth.ts';

/**
 * The first seed from 20270314 on whose day is unremarkable: no entry's true mean differs from what its change is
 * worth by more than one standard error. A truth outside an interval is then the judge's fault, not the day's.
 */
export const sampleSeed = 20270323;

/** Indented JSON with number lists on one line: a curve is read across, not down. */
function json(value: unknown): string {
  const indented = JSON.stringify(value, null, 2);
  return `${indented.replace(/\[[^[\]{}"]*\]/g, (list) => list.replace(/\s+/g, ' '))}\n`;
}

/** What one chapter was driven and logged like; the logs go to `put`. */
function chapterFiles(chapter: Chapter, seed: number, put: (path: string, text: string) => void) {
  const recorded = recordChapter(chapter, seed);
  const pulls = recorded.flatMap(({ driven }) => driven.pulls);
  const mean = (field: TraceField) =>
    meanCurve(pulls.map(({ trace, index }) => curveOf(trace, index, field)));
  const files = recorded.map(({ name, text, driven, logged }) => {
    put(`logs/${name}`, text);
    return { file: name, pulls: pullFacts(driven, logged) };
  });
  return { files, wheel: mean('wheelPower'), engine: mean('enginePower') };
}

/** Every file of the sample logs with its text, by path below sample-sessions. Same seed, same bytes. */
export function generateLogs(seed: number = sampleSeed): ReadonlyMap<string, string> {
  const out = new Map<string, string>();
  const put = (path: string, text: string) => out.set(path, text);
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
  put('setup.json', json(setupAsTyped()));
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
  return new Map([...logs, ...sessionFolder(story, logs, { car, setup: setupAsTyped(), conditions })]);
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
