import type { Note } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import { practice } from './practice.ts';
import type { PullPath } from './pull-path.ts';
import type { Setup } from './setup.ts';
import type { Strategy } from './strategy.ts';

export type Endurance = {
  /** Fluid of one pull, and of a minute at peak flow [m^3]; from a log where the setup carries one. */
  readonly perPull: number;
  readonly perMinute: number;
  readonly isLogged: boolean;
  /** Null without a tank. Counted down to the reserve. */
  readonly pullsPerTank: number | null;
  readonly minutesPerTank: number | null;
  readonly pullsInReserve: number | null;
  /** Used over planned, from the refills as noted; null where none is. */
  readonly usedOverPlanned: number | null;
  readonly notes: readonly Note[];
  readonly explanation: Explanation;
  readonly refillExplanation: Explanation | null;
};

/** Area under flow over time by trapezoids [m^3]. Gaps (NaN) count as nothing. */
export function fluidUsed(
  time: ArrayLike<number>,
  flow: ArrayLike<number>,
  from = 0,
  to = time.length,
): number {
  let sum = 0;
  for (let i = from + 1; i < to; i++) {
    const step = (time[i] ?? 0) - (time[i - 1] ?? 0);
    const mean = ((flow[i] ?? 0) + (flow[i - 1] ?? 0)) / 2;
    if (Number.isFinite(step * mean)) sum += step * mean;
  }
  return sum;
}

/**
 * How far the tank reaches.
 *
 *   V_pull = integral of q dt over the pull;   pulls = (tank - reserve) / V_pull
 *
 * Valid:  the pull of the setup; a day's driving between pulls comes on top.
 * Check:  a pull of 6 to 12 s uses 15 to 35 mL (common practice).
 */
export function enduranceOf(setup: Setup, path: PullPath, strategy: Strategy): Endurance {
  const { fluidSystem } = setup;
  const planned = fluidUsed(path.time, strategy.overPull.delivered);
  const { logged } = fluidSystem;
  const notes: Note[] = [];
  const perPull = logged ? (logged.fluid_mL * 1e-6) / logged.pulls : planned;
  if (logged) {
    notes.push({ code: 'injection/endurance-from-log', facts: { perPull, planned, pulls: logged.pulls } });
    if (planned > 0 && Math.abs(perPull / planned - 1) > practice.refillWithin)
      notes.push({
        code: 'injection/log-differs',
        facts: { perPull, planned, difference: perPull / planned - 1 },
      });
  }
  const delivered = strategy.overBoost.delivered;
  const perMinute = 60 * (delivered[delivered.length - 1] ?? 0);
  const tank = fluidSystem.tank_L === null ? null : fluidSystem.tank_L * 1e-3;
  const reserve = (fluidSystem.reserve_L ?? 0) * 1e-3;
  const usable = tank === null ? null : Math.max(0, tank - reserve);
  const pullsPerTank = usable === null || perPull <= 0 ? null : usable / perPull;
  if (pullsPerTank !== null && pullsPerTank < 10)
    notes.push({ code: 'injection/tank-empties', facts: { pulls: pullsPerTank } });
  // Two pulls: the one that was running when the light came on, and the one started before anyone saw it.
  if (fluidSystem.reserve_L !== null && reserve < 2 * perPull)
    notes.push({ code: 'injection/reserve-too-small', facts: { reserve, perPull } });

  const refills = fluidSystem.refills.filter((r) => r.pulls > 0);
  const used = refills.reduce((sum, r) => sum + r.filled_L * 1e-3, 0);
  const expected = refills.reduce((sum, r) => sum + r.pulls * perPull, 0);
  const usedOverPlanned = refills.length > 0 && expected > 0 ? used / expected : null;
  if (usedOverPlanned !== null)
    notes.push({
      code:
        Math.abs(usedOverPlanned - 1) > practice.refillWithin
          ? 'injection/refill-differs'
          : 'injection/refill-agrees',
      facts: { planned: expected, used, difference: usedOverPlanned - 1 },
    });
  return {
    perPull,
    perMinute,
    isLogged: logged !== null,
    pullsPerTank,
    minutesPerTank: usable === null || perMinute <= 0 ? null : usable / perMinute,
    pullsInReserve: fluidSystem.reserve_L === null || perPull <= 0 ? null : reserve / perPull,
    usedOverPlanned,
    notes,
    explanation: {
      id: 'injection/endurance',
      formula: 'pulls = (tank - reserve) / V_pull',
      tex: String.raw`N = \frac{V_\mathrm{tank}-V_\mathrm{reserve}}{\int q\,\mathrm{d}t}`,
      inputs: [
        { symbol: 'V_pull', value: perPull, kind: 'smallVolume' },
        ...(tank === null ? [] : [{ symbol: 'tank', value: tank, kind: 'tankVolume' as const }]),
        { symbol: 'reserve', value: reserve, kind: 'tankVolume' },
        { symbol: 'q at peak', value: perMinute / 60, kind: 'volumeFlow' },
      ],
      source: logged
        ? 'logged flow, integrated over the pulls that count'
        : 'planned flow, integrated over the pull of the setup; a minute: at peak flow',
      validRange: [],
    },
    refillExplanation:
      usedOverPlanned === null
        ? null
        : {
            id: 'injection/refill',
            formula: 'difference = used / (pulls V_pull) - 1',
            tex: String.raw`\frac{\sum V_\mathrm{refill}}{N\,V_\mathrm{pull}}-1`,
            inputs: [
              { symbol: 'used', value: used, kind: 'tankVolume' },
              { symbol: 'pulls', value: refills.reduce((n, r) => n + r.pulls, 0), kind: 'number' },
              { symbol: 'V_pull', value: perPull, kind: 'smallVolume' },
            ],
            source: `refills as noted; ${logged ? 'V_pull from logged flow' : 'V_pull from planned flow'}; 15 % over a tank: common practice`,
            validRange: [],
          },
  };
}
