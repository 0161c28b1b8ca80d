import { luckOf, type PullLuck } from './day.ts';
import { drive, type Phase } from './drive.ts';
import type { Section } from './logger.ts';
import { randomOf } from './random.ts';
import type { Trace } from './trace.ts';
import type { Tune } from './tune.ts';

/** One recorded file: its sections, and every true pull in order. */
export type Outing = {
  readonly sections: readonly Section[];
  readonly pulls: readonly { readonly trace: Trace; readonly index: number; readonly luck: PullLuck }[];
};

const cruise_s = 3.5;
const coast_s = 2.5;
/** A lap with the logger running; one with the logger paused is longer, for the cooler's sake. */
const lap_s = 22;

/**
 * Drives `count` pulls for one file. Paused: the logger is stopped while the car goes round, so its clock runs on
 * over a gap. Otherwise the lap between is in the log.
 */
export function outing(
  tune: Tune,
  options: { count: number; isPaused: boolean; liftFirstAt_rpm?: number | null },
  seed: number,
  label: string,
): Outing {
  const lucks = Array.from({ length: options.count }, (_, i) => luckOf(seed, `${label}/${i}`));
  const pullOf = (luck: PullLuck, i: number): Phase => ({
    kind: 'pull',
    luck,
    ...(i === 0 && options.liftFirstAt_rpm ? { liftEarly_rpm: options.liftFirstAt_rpm } : {}),
  });
  if (options.isPaused) {
    const pause = randomOf(seed, `${label}/pause`);
    let clock = 0;
    const sections = lucks.map((luck, i): Section => {
      const phases: Phase[] = [
        { kind: 'cruise', seconds: cruise_s, luck },
        pullOf(luck, i),
        { kind: 'coast', seconds: coast_s },
      ];
      const trace = drive(tune, phases, seed, `${label}/${i}`);
      const section = { trace, start_s: clock };
      clock += Math.round(trace.length + 70_000 + 25_000 * pause.uniform()) / 1000;
      return section;
    });
    return {
      sections,
      pulls: sections.map(({ trace }, i) => ({ trace, index: 0, luck: lucks[i] as PullLuck })),
    };
  }
  const phases = lucks.flatMap((luck, i): Phase[] => [
    ...(i === 0 ? [] : [{ kind: 'slow', luck } as const]),
    { kind: 'cruise', seconds: i === 0 ? cruise_s : lap_s, luck },
    pullOf(luck, i),
    { kind: 'coast', seconds: coast_s },
  ]);
  const trace = drive(tune, phases, seed, label);
  return { sections: [{ trace, start_s: 0 }], pulls: lucks.map((luck, index) => ({ trace, index, luck })) };
}
