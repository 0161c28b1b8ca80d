import { degrees } from '../../units/index.ts';
import { changePlace } from '../../words/index.ts';
import type { Fact, Section } from './handover-document.ts';
import { mixtureDigits, type Teller } from './teller.ts';

/** Above this the boost that was seen is more than the control's usual overshoot (common practice). */
const boostApart_kPa = 5;
/** Two start points nearer than this are the same one, typed in two units. */
const sameStart_kPa = 1;

type Mix = NonNullable<Teller['facts']['asLeft']['mix']>;

/** The fluid in words: `50 % methanol, 50 % water (by volume as poured)`. */
export function mixText(mix: Mix, { show, words }: Teller): string {
  const parts = (['methanol', 'ethanol'] as const).flatMap((id) => {
    const share = mix[`${id}_percent`];
    return share > 0 ? [`${show.quantity(share / 100, 'share', 0)}\u00a0${words.substances[id]}`] : [];
  });
  const water = 100 - mix.methanol_percent - mix.ethanol_percent;
  if (water > 0) parts.push(`${show.quantity(water / 100, 'share', 0)}\u00a0${words.substances.water}`);
  return words.fluidOf(parts, words.bases[mix.by]);
}

/** The fluid as left; null where nobody noted it. */
export function mixWords(teller: Teller): string | null {
  const { mix } = teller.facts.asLeft;
  return mix && mixText(mix, teller);
}

/** The sum of the kept steps; then each step, where there are several. */
function sparkRows({ facts, show, words, fact }: Teller, isShort: boolean): Fact[] {
  const { spark_deg, sparkSteps } = facts.asLeft;
  if (spark_deg === null) return [fact(words.spark, words.sparkNone)];
  const angle = (deg: number) => show.difference(degrees(deg), 'angle');
  const size = (step: (typeof sparkSteps)[number]) =>
    words.sparkStep(angle(step.size_deg), changePlace(step.where, show));
  const [only] = sparkSteps;
  if (only && sparkSteps.length === 1) return [fact(words.spark, size(only))];
  if (isShort) return [fact(words.spark, angle(spark_deg))];
  return [
    fact(words.spark, angle(spark_deg)),
    ...sparkSteps.map((step) => fact(words.ofChange(step.entry), size(step))),
  ];
}

/** The settings as left, and what in them does not fit together. */
export function settingsSection(teller: Teller, isShort: boolean): Section {
  const { facts, words, show, value, fact, options } = teller;
  const { asLeft } = facts;
  const boost = value(asLeft.boost_kPa, 'kPa', 'boost');
  const seen = value(asLeft.boostMeasured_kPa, 'kPa', 'boost');
  const start = value(asLeft.sprayStart_kPa, 'kPa', 'boost');
  const nozzles = asLeft.nozzles.map((n) =>
    words.nozzleRated(
      n.name,
      value(n.flow_mL_min, 'mL/min', 'volumeFlow') ?? '',
      value(n.ratedPressure_kPa, 'kPa', 'fluidPressure', 1) ?? '',
    ),
  );
  const option = <K extends string>(table: Readonly<Record<K, string>>, key: string | null) =>
    key === null ? null : (table[key as K] ?? key);
  const how = option(options['fluidSystem.metering'], asLeft.metering);
  const by = option(options['fluidSystem.input'], asLeft.meteringInput);
  const control: Fact[] = [
    fact(words.boostSet, boost),
    ...(seen === null ? [] : [fact(words.boostSeen, seen)]),
    fact(words.mixture, value(asLeft.lambda, 'lambda', 'lambda', mixtureDigits(show))),
    ...sparkRows(teller, isShort),
  ];
  const spray: Fact[] = [
    ...(asLeft.isSprayOn
      ? [fact(words.sprayStart, start), fact(words.sprayFull, value(asLeft.sprayFull_kPa, 'kPa', 'boost'))]
      : []),
    fact(words.nozzle, nozzles.length > 0 ? nozzles.join('; ') : null),
    fact(words.fluidMix, mixWords(teller)),
  ];
  if (!isShort)
    spray.push(
      fact(words.nozzlePlace, option(options['fluidSystem.place'], asLeft.nozzlePlace)),
      fact(words.metering, how === null || by === null ? how : words.meteringOf(how, words.inText(by))),
      fact(words.pumpPressure, value(asLeft.pumpPressure_kPa, 'kPa', 'fluidPressure', 1)),
      fact(words.flowAtPeak, value(asLeft.flowAtPeak_mL_min, 'mL/min', 'volumeFlow')),
    );
  const warnings: string[] = [];
  if (!asLeft.isSprayOn) warnings.push(words.sprayOff);
  if (
    boost !== null &&
    seen !== null &&
    (asLeft.boostMeasured_kPa ?? 0) - (asLeft.boost_kPa ?? 0) > boostApart_kPa
  )
    warnings.push(words.boostApart(seen, boost));
  const inSetup = asLeft.sprayStartInSetup_kPa;
  if (
    start !== null &&
    inSetup !== null &&
    Math.abs(inSetup - (asLeft.sprayStart_kPa ?? inSetup)) > sameStart_kPa
  )
    warnings.push(words.sprayApart(start, value(inSetup, 'kPa', 'boost') ?? ''));
  return {
    id: 'settings',
    title: words.asLeft,
    blocks: [
      isShort
        ? { kind: 'facts', facts: [...control, ...spray] }
        : {
            kind: 'groups',
            groups: [
              { title: words.controlGroup, facts: control },
              { title: words.sprayGroup, facts: spray },
            ],
          },
      ...warnings.map((text) => ({ kind: 'text', text, look: 'warn' }) as const),
    ],
    isKeptWhole: true,
  };
}
