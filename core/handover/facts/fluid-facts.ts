import { fluidOf } from '../../fluids/index.ts';
import { fallbackOf, fluidUsed } from '../../injection/index.ts';
import { tidy } from '../../units/index.ts';
import { edge } from './edge.ts';
import type { HandoverFacts } from './facts-schema.ts';
import type { HandoverSource } from './source.ts';

/** Density is stated at the temperature of the handbooks. */
const stated_C = 20;

/** Fluid of the pulls of the car as left, by their own flow channel [m^3 a pull]; null where no pull has one. */
function measuredPerPull({ pulls, last }: HandoverSource): { volume: number | null; pulls: number } {
  const used = (pulls.find((p) => p.id === last?.id)?.pulls ?? []).flatMap((pull) => {
    const flow = pull.curves.fluidFlow;
    const volume = flow ? fluidUsed(pull.power.time, flow) : 0;
    return volume > 0 ? [volume] : [];
  });
  const sum = used.reduce((a, b) => a + b, 0);
  return { volume: used.length > 0 ? sum / used.length : null, pulls: used.length };
}

/** The fluid as left: what the mix does, what a pull takes of it and how far a tank goes. */
export function fluidFacts(source: HandoverSource): HandoverFacts['fluid'] {
  const { plan, session } = source;
  const system = session.setup?.fluidSystem ?? null;
  const mix = system?.mix ?? null;
  const sheet = mix
    ? fluidOf({
        by: mix.by,
        methanol_percent: mix.methanol_percent,
        ethanol_percent: mix.ethanol_percent,
        temperature_C: stated_C,
      })
    : null;
  const known = sheet?.ok ? sheet.value : null;
  const measured = measuredPerPull(source);
  const planned = plan?.endurance.perPull ?? null;
  // What was measured beats what was worked out.
  const perPull = measured.volume ?? planned;
  const { tank_L = null, reserve_L = null } = system ?? {};
  const usable = tank_L === null ? null : Math.max(0, tank_L - (reserve_L ?? 0)) * 1e-3;
  const pullsPerTank = usable === null || perPull === null || perPull <= 0 ? null : usable / perPull;
  const { pullsPer100km } = session.handover;
  return {
    freezing_C: known ? edge(known.freezing.temperature, 'C') : null,
    freezesBelow: known?.freezing.isUpperLimit ?? false,
    flash_C: known?.flash ? edge(known.flash.cautious, 'C') : null,
    burns: known ? known.mix.massShares.water < 1 : null,
    hasMethanol: known ? known.mix.massShares.methanol > 0 : null,
    density_kg_m3: edge(known?.density, 'kg/m3'),
    tank_L,
    reserve_L,
    perPullPlanned_mL: edge(planned, 'mL'),
    perPullMeasured_mL: edge(measured.volume, 'mL'),
    perPullMeasuredOver: measured.pulls,
    pullsPerTank: edge(pullsPerTank, ''),
    pullsInReserve: reserve_L === null || !perPull ? null : tidy((reserve_L * 1e-3) / perPull),
    pullsPer100km,
    distancePerTank_km:
      pullsPerTank === null || pullsPer100km === null ? null : tidy((100 * pullsPerTank) / pullsPer100km),
    usedOverPlanned: edge(plan?.endurance.usedOverPlanned, ''),
  };
}

/** A rule of the fit review as answered: true passed, false to fix, null unanswered or not asked. */
function answered({ plan, session }: HandoverSource, id: string): boolean | null {
  const answer = session.setup?.fit[id as keyof typeof session.setup.fit];
  const item = plan?.fit.items.find((i) => i.id === id);
  if (item) return item.state === 'passed' ? true : item.state === 'unanswered' ? null : false;
  return answer === 'yes' ? true : answer === 'no' ? false : null;
}

/** The fallback, the answers that it rests on, and the band of what is normal. */
export function protectionFacts(source: HandoverSource): HandoverFacts['protection'] {
  const { plan, session } = source;
  const fallback = session.setup ? fallbackOf(session.setup) : null;
  return {
    fallbackBoost_kPa: edge(fallback?.boost, 'kPa'),
    actWithin_s: fallback?.actWithin ?? null,
    isFallbackWired: answered(source, 'fail-safe-wired'),
    isFallbackProven: answered(source, 'fail-safe-proven'),
    isLowLevelLightFitted: answered(source, 'low-level-warning'),
    guardBand: (plan?.guardBand ?? []).map((row) => ({
      boost_kPa: edge(row.boost, 'kPa') ?? 0,
      lowestFlow_mL_min: edge(row.lowestFlow, 'mL/min') ?? 0,
      flow_mL_min: edge(row.flow, 'mL/min') ?? 0,
      highestFlow_mL_min: edge(row.highestFlow, 'mL/min') ?? 0,
      lowestPressure_kPa: edge(row.lowestPressure, 'kPa') ?? 0,
      highestPressure_kPa: edge(row.highestPressure, 'kPa') ?? 0,
    })),
  };
}
