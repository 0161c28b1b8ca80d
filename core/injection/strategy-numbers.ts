import type { Explanation } from '../units/index.ts';
import type { SprayContext } from './feed-curve.ts';
import type { Strategy } from './strategy.ts';

/** Where a strategy leaves too little below peak: over which boost, and what lacks there as a share of its need. */
export type MidRangeCost = { readonly from: number; readonly to: number; readonly shortfall: number };

/**
 * What a strategy costs in the mid-range: the stretches below peak that are under-fed, taken together.
 *
 *   shortfall = sum (need - delivered) / sum need
 *
 * @returns  null where nothing below peak is under-fed by more than a trickle
 */
export function midRangeCost(strategy: Pick<Strategy, 'overBoost' | 'boostRegions'>): MidRangeCost | null {
  const { boost, need, delivered } = strategy.overBoost;
  const peak = boost.length - 1;
  let [missing, needed, from, to] = [0, 0, -1, -1];
  for (const region of strategy.boostRegions) {
    if (region.kind !== 'under' || region.to >= peak) continue;
    if (!isWorthSaying(strategy, region)) continue;
    if (from < 0) from = region.from;
    to = region.to;
    for (let i = region.from; i <= region.to; i++) {
      missing += (need[i] ?? 0) - (delivered[i] ?? 0);
      needed += need[i] ?? 0;
    }
  }
  return needed > 0 ? { from: boost[from] ?? 0, to: boost[to] ?? 0, shortfall: missing / needed } : null;
}

/** 5 % of peak need: a ratio of two trickles at the foot of the ramp is not worth a sentence. */
export function isWorthSaying(
  strategy: Pick<Strategy, 'overBoost'>,
  region: { readonly from: number; readonly to: number },
): boolean {
  const { need, delivered } = strategy.overBoost;
  let apart = 0;
  for (let i = region.from; i <= region.to; i++)
    apart = Math.max(apart, Math.abs((delivered[i] ?? 0) - (need[i] ?? 0)));
  return apart >= 0.05 * (need[need.length - 1] ?? 0);
}

/** Where the numbers of one strategy come from, made when somebody asks. */
export function explainStrategy(strategy: Strategy, context: SprayContext) {
  const { need, delivered } = strategy.overBoost;
  const peak = need.length - 1;
  const source = 'flow by the orifice equation at the controller’s setting; need: see there';
  const of = (
    id: string,
    formula: string,
    tex: string,
    inputs: Explanation['inputs'],
    said = source,
  ): Explanation => ({ id: `injection/${id}`, formula, tex, inputs, source: said, validRange: [] });
  const cost = midRangeCost(strategy);
  return {
    points: strategy.explanation,
    atStart: of(
      'ratio-at-start',
      'ratio = rho q(start) / m_fuel(start)',
      String.raw`r_\mathrm{start} = \frac{\rho\,q}{\dot m_\mathrm{fuel}}`,
      [
        { symbol: 'start', value: strategy.start, kind: 'boost' },
        { symbol: 'rho', value: context.system.density, kind: 'density' },
        { symbol: 'ratio', value: strategy.atStart.fluidToFuel, kind: 'share' },
      ],
      'flow when fluid first leaves the nozzle on the pull, over the fuel at that moment',
    ),
    peak: of(
      'feed-at-peak',
      'feed = q(peak) / q_need(peak)',
      String.raw`\frac{q(p_\mathrm{peak})}{q_\mathrm{need}(p_\mathrm{peak})}`,
      [
        { symbol: 'q', value: delivered[peak] ?? 0, kind: 'volumeFlow' },
        { symbol: 'q_need', value: need[peak] ?? 0, kind: 'volumeFlow' },
        { symbol: 'feed', value: strategy.peakFeed, kind: 'number' },
      ],
    ),
    misfeed: of(
      'misfeed',
      'miss = mean |q - q_need| / mean q_need, over boost up to peak',
      String.raw`\frac{\overline{|q-q_\mathrm{need}|}}{\overline{q_\mathrm{need}}}`,
      [
        { symbol: 'miss', value: strategy.misfeed, kind: 'share' },
        { symbol: 'points', value: need.length, kind: 'number' },
      ],
    ),
    midRange: of(
      'mid-range-cost',
      'shortfall = sum (q_need - q) / sum q_need, where under-fed below peak',
      String.raw`\frac{\sum (q_\mathrm{need}-q)}{\sum q_\mathrm{need}}`,
      cost === null
        ? []
        : [
            { symbol: 'from', value: cost.from, kind: 'boost' },
            { symbol: 'to', value: cost.to, kind: 'boost' },
            { symbol: 'shortfall', value: cost.shortfall, kind: 'share' },
          ],
      'under-fed: more than 15 % below the need (common practice)',
    ),
  };
}

/** Where the cells of the map come from. */
export function explainFeedMap(context: SprayContext, points: { start: number; full: number }): Explanation {
  return {
    id: 'injection/feed-map',
    formula: 'feed = q(setting(n, boost), boost) / (ratio(boost) m_fuel(n, boost) / rho)',
    tex: String.raw`\frac{q}{q_\mathrm{need}} = \frac{q(s,\,p)\,\rho}{r(p)\,\dot m_\mathrm{fuel}(n,p)}`,
    inputs: [
      { symbol: 'start', value: points.start, kind: 'boost' },
      { symbol: 'full', value: points.full, kind: 'boost' },
      { symbol: 'ratio at peak', value: context.need.ratio, kind: 'share' },
      { symbol: 'rho', value: context.system.density, kind: 'density' },
    ],
    source: 'orifice equation; fuel flow as the plan has it; right within 15 %: common practice',
    validRange: [],
  };
}
