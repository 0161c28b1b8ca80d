import { measuredOf } from '../../ladder/index.ts';
import { declaredChange, type Entry } from '../../session/index.ts';
import { tidy } from '../../units/index.ts';
import { edge } from './edge.ts';
import type { HandoverFacts } from './facts-schema.ts';
import type { HandoverSource } from './source.ts';

type AsLeft = HandoverFacts['asLeft'];

/**
 * What is set in the car as it is handed over: the kept changes of the ledger in order, on top of the setup sheet.
 * A dropped change was taken back and leaves nothing.
 */
export function asLeftOf({ session, pulls, plan, last }: HandoverSource): AsLeft {
  const { setup } = session;
  const kept = session.ledger.flatMap((entry, number) => {
    const declared = entry.state === 'kept' ? declaredChange(entry) : null;
    return declared ? [{ entry, number, declared }] : [];
  });
  const lastTo = (kind: Entry['kind']) =>
    kept.findLast((k) => k.entry.kind === kind && k.declared.to !== null)?.declared.to ?? null;
  const firstFrom = (kind: Entry['kind']) =>
    kept.find((k) => k.entry.kind === kind && k.declared.from !== null)?.declared.from ?? null;
  const sparkSteps = kept.flatMap(({ entry, number, declared }) =>
    entry.kind === 'spark' && declared.size !== null
      ? [{ entry: number, size_deg: edge(declared.size, 'deg') ?? 0, where: entry.change?.where ?? '' }]
      : [],
  );
  const isSprayOn = kept.some((k) => k.entry.kind === 'spray');
  const system = setup?.fluidSystem ?? null;
  const mix = system?.mix ?? null;
  const boost = lastTo('boost') ?? firstFrom('boost');
  const lastPulls = pulls.find((p) => p.id === last?.id)?.pulls ?? [];
  const measured = measuredOf(lastPulls);
  const start = lastTo('spray') ?? (isSprayOn ? (plan?.driven.start ?? null) : null);
  return {
    entry: last ? session.ledger.indexOf(last) : null,
    boost_kPa: edge(boost, 'kPa'),
    boostMeasured_kPa: edge(measured.boost, 'kPa'),
    isSprayOn,
    sprayStart_kPa: edge(start, 'kPa'),
    sprayFull_kPa: isSprayOn ? edge(plan?.driven.full, 'kPa') : null,
    sprayStartInSetup_kPa: isSprayOn ? edge(plan?.driven.start, 'kPa') : null,
    nozzles: (system?.fitted ?? []).flatMap((name) => {
      const nozzle = system?.nozzles.find((z) => z.name === name);
      return nozzle
        ? [{ name, flow_mL_min: nozzle.flow_mL_min, ratedPressure_kPa: nozzle.ratedPressure_kPa }]
        : [];
    }),
    nozzlePlace: system?.place ?? null,
    metering: system?.metering ?? null,
    meteringInput: system?.input ?? null,
    pumpPressure_kPa: system?.pump.setPressure_kPa ?? null,
    flowAtPeak_mL_min: edge(plan?.driven.overBoost.delivered.at(-1), 'mL/min'),
    mix: mix
      ? {
          by: mix.by,
          methanol_percent: mix.methanol_percent,
          ethanol_percent: mix.ethanol_percent,
        }
      : null,
    spark_deg: sparkSteps.length > 0 ? tidy(sparkSteps.reduce((sum, s) => sum + s.size_deg, 0)) : null,
    sparkSteps,
    lambda: edge(lastTo('mixture') ?? setup?.engine.lambda ?? null, 'lambda'),
  };
}
