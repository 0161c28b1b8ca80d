import type { Ledger } from '../../../core/contract/index.ts';
import type { Session } from '../../../core/session/index.ts';

/** What rounds to nothing bears no sign. */
const rounded = (value: number, digits: number) => Number(value.toFixed(digits)) + 0;
const fixed = (value: number, digits: number) => rounded(value, digits).toFixed(digits).replace('-', '−');
const signed = (value: number, digits: number) =>
  (rounded(value, digits) > 0 ? '+' : '') + fixed(value, digits);
const kW = (watts: number) => signed(watts / 1e3, 1);
const bar = (kPa: number, digits = 2) => `${fixed(kPa / 100, digits)}barg`;

/** An effect as a sheet may print it: with half of its interval, or with both its ends. */
function effect(value: number, [low, high]: readonly [number, number]): string[] {
  return [`${kW(value)}±${fixed((high - low) / 2e3, 1)}kW`, `${kW(value)}kW${kW(low)}kWto${kW(high)}kW`];
}

/**
 * Every figure that a session and its ledger hold for the customer, in the usual metric units and English, without
 * blanks. Written from the session alone, by hand: nothing of the summary's own making is used. Each is a list of
 * ways, one of which has to stand on the sheet.
 */
export function figuresOf(session: Session, ledger: Ledger): string[][] {
  const { car, conditions, limits, setup, tables } = session;
  if (!setup || !ledger.total) throw new Error('The sample has a setup and a measured whole.');
  const { engine, fluidSystem: fluid } = setup;
  const { total } = ledger;
  const fitted = fluid.nozzles.filter((n) => fluid.fitted.includes(n.name));
  const [low, high] = total.interval95;
  const changes = ledger.lines.flatMap((line, at): string[][] => {
    const { verdict } = line;
    if (at === 0) return [[`${fixed((line.level?.mean ?? 0) / 1e3, 1)}kWmean`]];
    if (!verdict || verdict.kind === 'not-comparable') return [[`${line.pulls}can’tbejudged`]];
    return verdict.effect === null || verdict.interval95 === null
      ? [['no figure']]
      : [effect(verdict.effect, verdict.interval95)];
  });
  const plain = [
    `${kW(total.effect)}kW`,
    `between${fixed(low / 1e3, 1)}and${fixed(high / 1e3, 1)}kW`,
    `Pullsthatcount${ledger.lines.reduce((sum, l) => sum + l.pulls, 0)}`,
    `±${fixed((ledger.repeatability?.deviationShare ?? 0) * 100, 2)}%`,
    `±${fixed(limits.margin_percent, 1)}%`,
    ...session.ledger.flatMap(({ kind, change }) => {
      const [from, to] = [change?.from?.value, change?.to?.value];
      if (to === undefined) return [];
      if (kind === 'boost') return [`${fixed(from ?? 0, 2)}to${fixed(to, 2)}barg`];
      if (kind === 'spray') return [`${fixed(to, 2)}barg`];
      if (kind === 'mixture') return [`${from}to${to}`];
      return [`${signed(to, 1)}°`];
    }),
    ...fitted.map((n) => `${n.name}:${n.flow_mL_min}mL/minat${bar(n.ratedPressure_kPa ?? 0, 1)}`),
    `${fluid.mix?.methanol_percent}%methanol`,
    `${100 - (fluid.mix?.methanol_percent ?? 0)}%water`,
    bar(fluid.pump.setPressure_kPa ?? 0, 1),
    `${fixed(fluid.tank_L ?? 0, 1)}L`,
    `${fixed(fluid.reserve_L ?? 0, 1)}L`,
    `${bar(engine.soundBoost_kPa ?? 0)}ofboost`,
    `${fixed(engine.displacement_L ?? 0, 1)}L`,
    `${engine.cylinders}cylinders`,
    `${fixed(engine.compressionRatio ?? 0, 1)}:1`,
    `${engine.octane_RON}RON`,
    `${car.mass_kg.toString().replace(/(\d)(\d{3})$/, '$1,$2')}kg±${car.massUncertainty_kg}kg`,
    `${conditions.ambient_C}°C`,
    `${fixed(conditions.barometer_kPa ?? 0, 1)}kPaabs`,
    `${conditions.relativeHumidity_percent}%`,
    `below${fixed(limits.leanestLambda ?? 0, 2)}λ`,
    `below${limits.injectorDuty_percent}%`,
    `below${limits.intake_C}°C`,
    `below${limits.exhaust_C}°C`,
    `Knockbelow${limits.knockEvents}`,
    `below${limits.mapCeiling_kPa}kPaabs`,
    `below${bar(limits.boostCeiling_kPa ?? 0)}`,
    `atleast${bar(limits.fluidPressureLowest_kPa ?? 0, 1)}`,
    ...tables.filter((t) => t.kind === 'spark').flatMap((t) => sparkLines(t.asRead, t.now)),
  ];
  return [
    ...changes,
    ...total.parts.map((part) => effect(part.effect, part.interval95)),
    ...plain.map((figure) => [figure]),
  ];
}

/** Lines of a spark table that differ, each with its load and what is added in every cell; and how many cells do. */
function sparkLines(asRead: string, now: string): string[] {
  const cells = (text: string) =>
    text
      .trim()
      .split(/\r?\n/)
      .map((line) => line.split('\t').map(Number));
  const [before, after] = [cells(asRead), cells(now)];
  const deltas = after.map((row, r) => row.map((v, c) => (c === 0 ? v : v - (before[r]?.[c] ?? 0))));
  const changed = deltas.slice(1).filter((row) => row.slice(1).some((d) => d !== 0));
  const count = changed.flatMap((row) => row.slice(1)).filter((d) => d !== 0).length;
  return [
    `${count}cells`,
    ...changed.map(([load, ...row]) => `${load}${row.map((d) => signed(d, 1)).join('')}`),
  ];
}
