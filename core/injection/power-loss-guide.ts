import type { Note } from '../result/index.ts';
import { mostFeed } from './feed-curve.ts';
import type { NozzleChoice } from './nozzle-choice.ts';
import type { PullPath } from './pull-path.ts';
import type { Setup } from './setup.ts';
import type { Strategy } from './strategy.ts';

/**
 * What to do when a verdict says loss after the spray was added or made larger: later start, then a smaller
 * nozzle, then use the room it has made. In this order, with this car's numbers, each its own change.
 *
 * @param driven   the strategy that was driven
 * @param later    the later start of the same nozzles
 * @param fitted   what was driven with
 * @param choices  all nozzles, best first
 *
 * Source: common practice.
 */
export function powerLossGuide(of: {
  setup: Setup;
  path: PullPath;
  driven: Strategy;
  later: Strategy;
  fitted: NozzleChoice;
  choices: readonly NozzleChoice[];
}): readonly Note[] {
  const { setup, path, driven, later, fitted, choices } = of;
  const notes: Note[] = [{ code: 'injection/spray-alone', facts: {} }];
  const over = driven.pullRegions.filter((r) => r.kind === 'over');
  for (const region of over) {
    const most = mostFeed(driven.overPull, region.from, region.to);
    if (most === 0) continue;
    notes.push({
      code: 'injection/power-costs-where',
      facts: {
        from: driven.overPull.engineSpeed_rad_s[region.from] ?? 0,
        to: driven.overPull.engineSpeed_rad_s[region.to] ?? 0,
        most,
      },
    });
  }
  // A tenth of peak where the start is already as late as the formula has it: enough to see, small enough to undo.
  const step = 0.1 * path.peakBoost;
  const limit = setup.engine.knockLimitedBoost_kPa;
  const latest = limit === null ? 0.9 * path.peakBoost : Math.min(0.9 * path.peakBoost, limit * 1e3);
  const to = Math.min(latest, later.start > driven.start + 1 ? later.start : driven.start + step);
  if (to > driven.start + 1)
    notes.push({ code: 'injection/guide-later-start', facts: { from: driven.start, to } });
  const smaller = choices
    .filter((c) => c.flow < 0.95 * fitted.flow && c.fit !== 'too-small')
    .sort((a, b) => b.flow - a.flow)[0];
  notes.push(
    smaller
      ? {
          code: 'injection/guide-smaller-nozzle',
          facts: { choice: smaller.names.join(' + '), delivered: smaller.flow, feed: smaller.feed },
        }
      : { code: 'injection/guide-no-smaller-nozzle', facts: {} },
  );
  notes.push({ code: 'injection/guide-use-the-room', facts: { boost: path.peakBoost } });
  return notes;
}
