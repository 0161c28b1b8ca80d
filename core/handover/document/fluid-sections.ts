import { toSi } from '../../units/index.ts';
import { typedDecimals } from '../../words/index.ts';
import type { Block, Fact, Section } from './handover-document.ts';
import { mixWords } from './settings-section.ts';
import type { Teller } from './teller.ts';

/** What the driver does when the light comes on, in order. */
export function lightLines(teller: Teller): string[] {
  const { facts, words, show, value, volume } = teller;
  const { fluid, asLeft } = facts;
  const said = words.lightLines;
  const start = value(asLeft.sprayStart_kPa, 'kPa', 'boost');
  const reserve = volume(fluid.reserve_L);
  return [
    said.lift,
    fluid.pullsInReserve !== null && reserve !== null
      ? said.reserve(show.number(Math.floor(fluid.pullsInReserve)), reserve)
      : said.reserveUnknown,
    start === null ? said.gentlyUnknown : said.gently(start),
    said.refill(mixWords(teller) ?? words.unknown),
    said.check,
  ];
}

function yesNo(value: boolean | null, { words }: Teller): string | null {
  return value === null ? null : value ? words.yes : words.no;
}

/** The fallback, the guard band, and what the driver must do. */
export function protectionSection(teller: Teller): Section {
  const { facts, words, show, value, fact } = teller;
  const { protection } = facts;
  const fallback = value(protection.fallbackBoost_kPa, 'kPa', 'boost');
  const seconds = show.quantity(protection.actWithin_s ?? 0, 'time', 1);
  const blocks: Block[] = [
    { kind: 'heading', text: words.light },
    { kind: 'list', isOrdered: true, items: lightLines(teller), look: 'warn' },
    { kind: 'heading', text: words.fallback },
    {
      kind: 'text',
      text: fallback === null ? words.fallbackUnknown : words.fallbackTo(fallback, seconds),
    },
    {
      kind: 'facts',
      facts: [
        fact(words.fallbackWired, yesNo(protection.isFallbackWired, teller)),
        fact(words.fallbackProven, yesNo(protection.isFallbackProven, teller)),
        fact(words.lowLevelWired, yesNo(protection.isLowLevelLightFitted, teller)),
      ],
    },
  ];
  return { id: 'protection', title: words.protection, blocks };
}

/** What is still normal over boost, for the watch in the engine control. */
export function guardSection(teller: Teller): Section {
  const { facts, words, show } = teller;
  const { guardBand } = facts.protection;
  const blocks: Block[] = [];
  if (guardBand.length === 0) blocks.push({ kind: 'text', text: words.guardNone });
  else {
    const bare = (
      v: number,
      unit: 'kPa' | 'mL/min',
      kind: 'boost' | 'volumeFlow' | 'fluidPressure',
      d?: number,
    ) => show.bare(toSi(v, unit), kind, d);
    const figure = (text: string) => ({ text });
    const flow = `${words.flow}, ${show.unit('volumeFlow')}`;
    const pressure = `${words.pressure}, ${show.unit('fluidPressure')}`;
    blocks.push(
      { kind: 'text', text: words.guardLead, look: 'small' },
      {
        kind: 'table',
        caption: words.guard,
        columns: [
          { title: `${words.boost}, ${show.unit('boost')}`, isFigure: true, width: 'medium' },
          { title: words.lowest, group: flow, isFigure: true },
          { title: words.usual, group: flow, isFigure: true },
          { title: words.highest, group: flow, isFigure: true },
          { title: words.lowest, group: pressure, isFigure: true },
          { title: words.highest, group: pressure, isFigure: true },
        ],
        rows: guardBand.map((row) => ({
          cells: [
            figure(bare(row.boost_kPa, 'kPa', 'boost')),
            figure(bare(row.lowestFlow_mL_min, 'mL/min', 'volumeFlow')),
            figure(bare(row.flow_mL_min, 'mL/min', 'volumeFlow')),
            figure(bare(row.highestFlow_mL_min, 'mL/min', 'volumeFlow')),
            figure(bare(row.lowestPressure_kPa, 'kPa', 'fluidPressure', 1)),
            figure(bare(row.highestPressure_kPa, 'kPa', 'fluidPressure', 1)),
          ],
        })),
        scale: null,
      },
    );
  }
  return { id: 'guard', title: words.guard, blocks, isKeptWhole: true };
}

/** Full-throttle pulls on 100 km or miles for the examples where the customer's own figure is unknown. */
const exampleRates = [5, 10, 20] as const;

function distanceWords(teller: Teller): string | null {
  const { facts, words, show, distance, distanceUnit_km } = teller;
  const { pullsPerTank, pullsPer100km, distancePerTank_km } = facts.fluid;
  if (pullsPerTank === null) return null;
  const hundred = distance(100 * distanceUnit_km);
  if (distancePerTank_km !== null && pullsPer100km !== null) {
    // As it was given; two figures where it was given for the other unit.
    const rate =
      distanceUnit_km === 1 ? pullsPer100km : Number((pullsPer100km * distanceUnit_km).toPrecision(2));
    return words.distanceAgreed(
      distance(distancePerTank_km),
      show.number(rate, typedDecimals(rate)),
      hundred,
    );
  }
  const at = (rate: number) => distance(((100 * pullsPerTank) / rate) * distanceUnit_km);
  const [first, ...others] = exampleRates;
  return words.distanceExamples(
    at(first),
    show.number(first),
    hundred,
    others.map((rate) => words.distanceExample(at(rate), show.number(rate))).join(', '),
  );
}

/** Refill, winter, storage. */
export function fluidSection(teller: Teller): Section {
  const { facts, words, show, value, fact, volume, smallVolume } = teller;
  const { fluid } = facts;
  const freezing = value(fluid.freezing_C, 'C', 'temperature', 0);
  const ice = freezing === null ? null : fluid.freezesBelow ? words.freezesBelow(freezing) : freezing;
  const flash = value(fluid.flash_C, 'C', 'temperature', 0);
  const planned = smallVolume(fluid.perPullPlanned_mL);
  const measured = smallVolume(fluid.perPullMeasured_mL);
  const perPull = [
    ...(measured === null ? [] : [words.perPullMeasured(measured, fluid.perPullMeasuredOver)]),
    ...(planned === null ? [] : [words.perPullPlanned(planned)]),
  ];
  const rows: Fact[] = [
    fact(words.fluidMix, mixWords(teller)),
    fact(words.density, value(fluid.density_kg_m3, 'kg/m3', 'density', 3)),
    fact(words.freezes, ice),
    fact(words.flash, flash ?? (fluid.burns === false ? words.flashNone : null)),
    fact(words.tank, volume(fluid.tank_L)),
    fact(words.reserve, volume(fluid.reserve_L)),
    fact(words.perPull, perPull.length > 0 ? perPull.join('; ') : null),
    fact(
      words.lasts,
      fluid.pullsPerTank === null ? null : words.lastsPulls(show.number(Math.floor(fluid.pullsPerTank))),
    ),
    fact(words.distance, distanceWords(teller)),
  ];
  const keep = [
    ice === null ? words.winterUnknown : words.winter(ice),
    flash === null ? words.storage.plain : words.storage.burns(flash),
    // Where nobody noted the fluid the caution for the worst one stands.
    ...(fluid.hasMethanol === false ? [] : [words.storage.methanol]),
    ...(fluid.burns === false ? [] : [words.storage.weakens]),
    words.storage.law,
    words.keepLog,
  ];
  const apart = fluid.usedOverPlanned === null ? 0 : fluid.usedOverPlanned - 1;
  // 15 % over a tank is what planned and used fluid agree within (common practice).
  if (Math.abs(apart) > 0.15) keep.push(words.refillDiffers(show.difference(apart, 'share', 0)));
  return {
    id: 'fluid',
    title: words.fluid,
    blocks: [
      { kind: 'facts', facts: rows },
      { kind: 'list', isOrdered: false, items: keep },
    ],
  };
}
