export const now = {
  title: 'Now',
  gates: 'Gates',
  noGates: 'No limit is known yet. Limits are in Setup.',
  car: {
    title: 'Say what the car weighs',
    why: 'Power follows from mass and acceleration; without it nothing can be compared.',
  },
  baseline: {
    title: 'Drive the baseline',
    why: 'Three pulls or more in one gear, from below spool to just under the limiter, cool-down between.',
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
  closed: (gate: string) => ({
    title: `${gate}: stop here`,
    why: 'A gate has closed. Go back to the last entry before it and find the reason first.',
  }),
  chooseFiles: 'Choose log files',
  addChange: 'Write down the change',
  openSetup: 'Open setup',
  dropChange: 'Drop the change',
  lookBench: 'Look at the bench',
  gate: {
    knock: 'Knock',
    retard: 'Knock retard',
    lambda: 'Leanest lambda',
    intake: 'Intake air',
    exhaust: 'Exhaust gas',
    duty: 'Injector duty',
    fluidPressure: 'Fluid pressure',
    map: 'Manifold pressure',
  },
  limit: (value: string, limit: string) => `${value}, limit ${limit}`,
  lowest: (value: string, limit: string) => `${value}, lowest ${limit}`,
  quiet: 'none seen',
  events: (n: number, of: number) => `${n} of ${of} ${of === 1 ? 'event' : 'events'}`,
  gateStates: { clear: 'clear', close: 'close', closed: 'closed' },
  cautions: {
    pull: 'A pull belongs on a dyno or a closed road. The driver drives; someone else works the laptop.',
    boost:
      'More boost with too little fluid, fuel or spark margin can destroy the engine in seconds. Small steps, and stop at the first knock.',
    spark:
      'Spark beyond the knock limit breaks pistons within seconds. Half a degree near the limit, and listen.',
    close: (gate: string) => `${gate} is close. The next step could close this gate: plan for it first.`,
  },
};
