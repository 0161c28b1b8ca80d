export const now = {
  title: 'Now',
  gates: 'Gates',
  baseline: {
    title: 'Drive the baseline',
    why: 'Three pulls or more in one gear, from below spool to just under the limiter, with time to cool between.',
  },
  baselineMore: (n: number) => ({
    title: n === 1 ? 'One more baseline pull' : `${n} more baseline pulls`,
    why: 'The scatter between pulls is what every later effect is held against.',
  }),
  change: {
    title: 'Make one change',
    why: 'The baseline stands. Change one thing, write it down, drive it.',
  },
  drive: (entry: string) => ({
    title: `Drive ${entry}`,
    why: 'Two to four pulls, same gear, same start, nothing else changed.',
  }),
  more: (n: number, entry: string) => ({
    title: n === 1 ? `One more pull for ${entry}` : `${n} more pulls for ${entry}`,
    why: 'Then 8 in 10 that the bench can tell an effect of the margin’s size from none.',
  }),
  undecidable: (entry: string) => ({
    title: `${entry} can’t be told from none`,
    why: 'No sensible number of pulls would decide it. Steadier pulls or a larger step would.',
  }),
  notComparable: (entry: string) => ({
    title: `Drive ${entry} again`,
    why: 'It can’t be compared as it was driven; the reason stands beside the verdict.',
  }),
  loss: (entry: string) => ({
    title: `Go back on ${entry}`,
    why: 'It lost power. Drop it, and the next change stands on the one before.',
  }),
  again: {
    title: 'Drive an earlier entry again',
    why: 'Four changes since the day was last checked. If it moved, the day moved.',
  },
  next: {
    title: 'Make the next change',
    why: 'The last one is proven. One thing at a time.',
  },
  chooseFiles: 'Choose log files',
  addChange: 'Write down the change',
  openSetup: 'Open setup',
  dropChange: 'Drop the change',
  dropped: 'Dropped. Working out what comes next',
  gateLimit: (value: string, limit: string) => `${value}, limit ${limit}`,
  gateLowest: (value: string, limit: string) => `${value}, lowest ${limit}`,
  gateOf: (value: string, limit: string) => `${value} of ${limit}`,
  gateBound: {
    number: (limit: string) => `stop at ${limit}`,
    lowest: (limit: string) => `lowest ${limit}`,
    limit: (limit: string) => `limit ${limit}`,
  },
  notDriven: 'They are read from its pulls.',
  notLogged: (names: string) => `Not logged, so look yourself: ${names.toLowerCase()}.`,
  gateStates: { open: 'open', near: 'close', closed: 'closed', unmeasured: 'not logged' },
  writeStep: 'Write down this step',
  openPlan: 'Open the plan',
  openLimits: 'Look at the limits',
  openFit: 'Open the fit review',
  stepOf: (n: number, of: number) => `step ${n} of ${of}`,
  closedWhy: (measured: string) => `${measured}. No verdict counts while a gate is closed.`,
  openHandover: 'Write the handover',
  stepsLeft: (n: number) =>
    n === 1 ? 'One step is left on the ladder.' : `${n} steps are left on the ladder.`,
  noLadder: 'With engine and fluid system in Setup, the next step comes with its size and its gates.',
  cautions: {
    pull: 'A pull belongs on a dyno or a closed road. The driver drives; someone else works the laptop.',
    boost:
      'More boost with too little fluid, fuel or spark margin can destroy the engine in seconds. Small steps, and stop at the first knock.',
  },
};
