import type { Plan } from '../../core/injection/index.ts';
import type { ScreenWords, Show, VerdictPart } from '../../core/words/index.ts';

/** The plan as a sentence: where to set it, and what that feeds, the second coloured by whether it fits. */
export function planHeadline(plan: Plan, said: ScreenWords['plan'], show: Show): VerdictPart[] {
  const { driven, need } = plan;
  const share = (value: number) => show.quantity(value, 'share', 0);
  const peak = share(driven.peakFeed * need.ratio);
  const start = driven.atStart.fluidToFuel > 0 ? share(driven.atStart.fluidToFuel) : null;
  const fit = driven.peakFeed < 0.85 ? 'loss' : driven.peakFeed > 1.15 ? 'undecided' : 'gain';
  return [
    { text: said.startFull(show.quantity(driven.start, 'boost'), show.quantity(driven.full, 'boost')) },
    { text: said.itFeeds },
    { text: start === null ? said.feedsPeak(peak) : said.feeds(start, peak), tone: fit },
    { text: '.' },
  ];
}
