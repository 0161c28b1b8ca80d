/** The wording of the customer summary. What is in it already carries its unit. */
export const handoverPhrases = {
  title: 'Handover',
  invented: 'Invented example: this car, these people and these measurements do not exist.',
  forCustomer: 'For',
  byShop: 'Handed over by',
  page: 'Page',
  number: 'No.',
  logo: 'Logo',
  unknown: 'not noted',
  notMeasured: 'not measured',
  none: 'none',
  yes: 'yes',
  no: 'no',
  before: 'before',
  after: 'after',

  gained: (size: string, low: string, high: string) =>
    `At the wheels the car gained ${size}, with 95 % confidence between ${low} and ${high}.`,
  lost: (size: string, low: string, high: string) =>
    `At the wheels the car lost ${size}, with 95 % confidence between ${low} and ${high}.`,
  noDifference: (effect: string, low: string, high: string) =>
    `At the wheels no difference is proven: ${effect}, with 95 % confidence between ${low} and ${high}.`,
  wholeNone: 'There are not yet two measured states to compare, so nothing is claimed.',
  wholeMeans: 'From the first measurement to the car as left, over the engine speeds that all pulls share.',
  intervalOf: (low: string, high: string) => `${low} to ${high}`,
  effectOfAll: 'All changes together',
  peakPower: 'Highest wheel power',
  peakTorque: 'Highest torque at the wheels',
  wasBefore: (value: string) => `${value} before`,
  at: (value: string, speed: string) => `${value} at ${speed}`,

  powerChart: 'Power before and after',
  wheelPower: 'Wheel power',
  wheelTorque: 'Torque at the wheels, referred to engine speed',
  engineSpeed: 'Engine speed',
  difference: (unit: string) => `Difference, ${unit}, 95 % band for the whole curve`,
  provenBar: 'proven',
  chartDescription: (before: string, after: string) =>
    `Wheel power over engine speed, ${before} against ${after}, with the difference under it.`,
  torqueDescription: (before: string, after: string) =>
    `Torque at the wheels, referred to engine speed, ${before} against ${after}.`,
  chartReading:
    'Dashed is before, solid is after. The band round each line is where its mean lies with 95 % confidence.',
  provenReading: 'The bar under the chart marks the engine speeds at which the difference is proven.',
  noChart: 'There are not two measured states whose curves could be drawn.',

  asLeft: 'The settings as left',
  controlGroup: 'Engine control',
  sprayGroup: 'Spray',
  boostSet: 'Boost, as set',
  boostSeen: 'Boost, highest in the last pulls',
  boostApart: (seen: string, set: string) =>
    `The last pulls showed ${seen} of boost where ${set} was set. Have the boost control checked before the next full throttle.`,
  spark: 'Spark over the first measurement',
  sparkNone: 'as at the first measurement',
  sparkStep: (size: string, where: string) => `${size}${where === '' ? '' : ` ${where}`}`,
  ofChange: (entry: number) => `of it in change ${entry}`,
  mixture: 'Mixture target at full load',
  sprayStart: 'Spray starts at',
  sprayFull: 'Spray is full at',
  sprayOff: 'The spray is off.',
  sprayApart: (ledger: string, setup: string) =>
    `The notes of the day say that the spray starts at ${ledger}, the setup sheet says ${setup}. Ask the tuner which one stands in the controller.`,
  nozzle: 'Nozzle',
  nozzleRated: (name: string, flow: string, pressure: string) => `${name}: ${flow} at ${pressure}`,
  nozzlePlace: 'Where it sprays',
  metering: 'Metered by',
  meteringOf: (how: string, by: string) => `${how}, following ${by}`,
  pumpPressure: 'Pump pressure held',
  flowAtPeak: 'Flow at peak boost, as worked out',
  fluidMix: 'Fluid',
  sparkTables: 'Spark, cell by cell',
  sparkTable: (name: string) => `Change of the table ${name} in degrees`,
  sparkTableLead: (name: string, date: string, cells: number) =>
    `Degrees by which the table “${name}” as left differs from the one that was read on ${date}: ${cells} ${cells === 1 ? 'cell' : 'cells'}. A plus is earlier, a dot is unchanged, and what is not shown is unchanged as well.`,
  sparkTableSame: (name: string, date: string) =>
    `The table “${name}” is the one that was read on ${date}, cell by cell.`,
  sparkTableWithout: (numbers: string, count: number) =>
    count === 1
      ? `Change ${numbers} was noted without its cells: whether this table holds it, the session does not tell.`
      : `Changes ${numbers} were noted without their cells: whether this table holds them, the session does not tell.`,
  sparkTableOpen: 'The table holds a change that stands in no entry of the day.',
  loadAxis: { absolute: 'Manifold pressure', gauge: 'Boost', throttle: 'Throttle' },
  tablesNone: 'No tables of the engine control are kept in this session.',

  changes: 'What each change was worth',
  change: 'Change',
  pulls: 'Pulls',
  worth: 'Effect on wheel power',
  baselineLevel: (value: string) => `${value} mean`,
  notDriven: 'Not driven.',
  notJudged: 'can’t be judged',
  droppedMark: 'dropped',
  stillHold: (numbers: string) =>
    `Judged all together, so that the whole list errs in one session of twenty (Holm’s adjustment), these statements still hold: ${numbers}.`,
  noneHold: 'Judged all together (Holm’s adjustment), none of these statements holds on its own.',
  holdNot: (numbers: string) => `These do not hold in that company and need more pulls: ${numbers}.`,
  leftOut: (count: number) =>
    count === 1
      ? 'One change of the day is not shown here, at the choice of the tuner.'
      : `${count} changes of the day are not shown here, at the choice of the tuner.`,
  parts: 'Where it came from',
  part: 'Kind of change',
  partKinds: {
    spray: 'Spray',
    boost: 'Boost',
    spark: 'Spark',
    mixture: 'Mixture',
    fluid: 'Fluid',
    other: 'Other',
    nothing: 'Driven again',
    'not-judged': 'A step that could not be judged by itself',
  },
  partsBand:
    'Here every state is reckoned over the engine speeds that all of them share, so a figure can differ a little from the list above.',
  partEntries: 'Changes',
  wholeRow: 'All together',
  notJudgedWhy:
    'In the step that could not be judged something else moved as well: the power is there, but nobody can say which of the two brought it.',

  dropped: 'Tried and dropped',
  droppedNone: 'Nothing that was tried was dropped.',
  droppedLead:
    'These were driven and not kept. They are in the book so that nobody tries them again unawares.',

  gates: 'Stop rules, and how close the engine came',
  gatesLead:
    'Each rule has a limit at which the tuner stops. “Of the way” is how far the engine went towards it: 100 % is at the limit.',
  gate: 'What was watched',
  limit: 'Stop rule',
  below: (limit: string) => `below ${limit}`,
  atLeast: (limit: string) => `at least ${limit}`,
  last: 'As left',
  closest: 'Closest of the day',
  ofTheWay: 'Of the way',
  inChange: 'In change',
  unwatched: 'no sensor in the logs',
  gateStates: { near: 'near the limit', closed: 'past the limit' },
  gatesNone: 'No pulls with a watched stop rule are in this session.',
  gatesClosed: (names: string) =>
    `In the car as left these are past their limit: ${names}. That is no state to drive hard in.`,

  protection: 'If the fluid fails',
  fallback: 'What must happen',
  fallbackTo: (boost: string, seconds: string) =>
    `The control must fall back to ${boost} of boost and to the spark that belongs to it, within ${seconds} of a lost flow or pressure.`,
  fallbackUnknown:
    'Not known: this engine was not shown to run free of knock without fluid at any boost, so no fallback can be named. Do not drive it at full load before one is set and tried.',
  fallbackWired: 'Fallback wired to flow or pressure',
  fallbackProven: 'Fallback seen to come in',
  lowLevelWired: 'Low-level light fitted',
  guard: 'Normal flow and pressure, for the watch in the engine control',
  guardLead:
    'Outside these limits at full throttle the fallback must come in. Pressures are behind the pump, above ambient.',
  guardNone: 'No limits could be worked out: the setup sheet lacks what they need.',
  boost: 'Boost',
  flow: 'Flow',
  lowest: 'lowest',
  usual: 'usual',
  highest: 'highest',
  pressure: 'Pressure',
  light: 'When the low-level light comes on',
  lightLines: {
    lift: 'Lift off at once and use no full throttle until the tank is filled.',
    reserve: (pulls: string, volume: string) =>
      `The light leaves ${volume}, at most ${pulls} full pulls. It is there to get home on, not to use up.`,
    reserveUnknown: 'How much is left when the light comes on is not noted, so reckon with none.',
    gently: (start: string) => `Drive gently; below ${start} of boost the engine asks for no fluid.`,
    gentlyUnknown: 'Drive gently, without boost.',
    refill: (mix: string) =>
      `Fill in the same fluid, ${mix}, and nothing else: the settings fit no other strength.`,
    check:
      'If the light stays on, or the engine pulls less, pings or sounds different afterwards, use no full throttle and have it looked at.',
  },

  fluid: 'The fluid: refill, winter, storage',
  freezes: 'Ice forms from',
  freezesBelow: (value: string) => `somewhere below ${value}`,
  flash: 'Flash point, cautious estimate',
  flashNone: 'does not burn',
  density: 'Density at 20 °C',
  tank: 'Tank',
  reserve: 'Left when the light comes on',
  perPull: 'Used in one full pull',
  perPullPlanned: (value: string) => `${value}, worked out`,
  perPullMeasured: (value: string, pulls: number) => `${value}, measured over ${pulls} pulls`,
  lasts: 'A tank lasts, down to the light',
  lastsPulls: (pulls: string) => `${pulls} full pulls`,
  distance: 'In distance',
  distanceAgreed: (distance: string, rate: string, hundred: string) =>
    `about ${distance}, at ${rate} full pulls per ${hundred}`,
  distanceExamples: (first: string, rate: string, hundred: string, others: string) =>
    `depends on the driver: ${first} at ${rate} full pulls per ${hundred}, ${others}`,
  distanceExample: (distance: string, rate: string) => `${distance} at ${rate}`,
  refillDiffers: (difference: string) =>
    `Refills so far differ from this by ${difference}: look for a leak or a clogged nozzle.`,
  keepLog: 'Note every refill: a tank that lasts clearly longer or shorter than this means a clog or a leak.',
  winter: (freezes: string) =>
    `Winter: from ${freezes} ice blocks line and nozzle, and the engine runs without its fluid. Where it may get that cold, keep the car off full throttle, or have another strength settled and measured. Adding alcohol by hand changes the settings.`,
  winterUnknown: 'Winter: at what temperature this fluid freezes is not known.',
  storage: {
    burns: (flash: string) =>
      `Storage: its vapour can catch fire from about ${flash}. Keep it closed and marked, ventilated, away from flame, sparks and hot parts.`,
    plain: 'Storage: keep it closed, marked, clean and out of the sun.',
    methanol:
      'Methanol is toxic through skin, breath and mouth and can blind. Gloves and goggles when filling; out of reach of children; never in a drinks bottle.',
    weakens:
      'Alcohol escapes from an open tank, and the mix grows weaker. Use fresh fluid after a long stand.',
    law: 'Local law decides how much may be stored and carried, and how.',
  },

  car: 'The car and its fit',
  name: 'Car',
  mass: 'Mass as driven',
  massWith: (mass: string, half: string) => `${mass} ± ${half}`,
  engine: 'Engine',
  engineOf: (parts: readonly string[]) => parts.join(', '),
  /** The name of a choice inside a sentence. */
  inText: (choice: string) => choice.toLowerCase(),
  cylinders: (count: number) => `${count} cylinders`,
  compression: (ratio: string) => `compression ${ratio}:1`,
  fuel: 'Fuel',
  octane: (ron: string, ethanol: string | null) =>
    `${ron} RON${ethanol === null ? '' : `, ${ethanol} ethanol by volume`}`,
  fit: 'Fit review',
  fitPassed: (passed: number, all: number) => `${passed} of ${all} points in order`,
  fitNone: 'not done',
  fitToFix: 'To be put right',
  fitUnanswered: 'Not answered in the review',
  setupNone:
    'The setup sheet of this session is empty: engine, nozzle, fluid and tank are not on record, so what rests on them is missing here.',

  measured: 'How it was measured',
  day: 'Day',
  place: 'Where',
  dyno: 'Dyno',
  road: 'Closed road',
  gear: 'Gear of the pulls',
  air: 'Ambient air',
  barometer: 'Barometer',
  humidity: 'Relative humidity',
  grade: 'Slope',
  correction: 'Power corrected to',
  noCorrection: 'not corrected for weather',
  correctionBy: (standard: string, low: string, high: string) =>
    low === high ? `${standard}, factor ${low}` : `${standard}, factors ${low} to ${high}`,
  pullsCounted: 'Pulls that count',
  repeatability: 'One pull repeats within',
  repeats: (share: string) => `± ${share} (standard deviation)`,
  drift: 'Drift of the day',
  driftPerPull: (share: string, half: string) => `${share} ± ${half} a pull`,
  driftUnknown: 'not measured: no earlier state was driven again',
  margin: 'Counts as equal',
  methodLines: [
    'Power is wheel power from the logged acceleration of the car, its mass and its road load; it is not crank power.',
    'A pull is one full-throttle acceleration in one gear. Each state was driven several times; a pull counts once, however many samples it holds.',
    'An effect is the mean after minus the mean before over the engine speeds that all pulls share.',
    'The figure behind ± is half of the 95 % interval: it carries how far repeated pulls scatter.',
    'Changes were made one at a time. Where a second thing moved, no effect is claimed.',
  ],
  methodLineDyno:
    'Power is what the dyno recorded at the wheels; it is not crank power, and another dyno reads differently.',

  limits: 'What was not proven',
  limitLines: {
    band: (f: { from: string; to: string }) =>
      `Nothing is said of engine speeds outside ${f.from} to ${f.to}, of other gears or of part load.`,
    level: (f: { half: string }) =>
      `The level of power itself is known to about ± ${f.half}, as mass and road load are known; the differences of one day are known better.`,
    otherwise: (f: { why: string }) =>
      `Between the first measurement and the car as left not only the settings stood otherwise, and the figure for all changes together carries that too: ${f.why}`,
    uncorrected: () =>
      'Power is not corrected for weather: on another day the same car shows another figure.',
    'not-judged': (f: { number: string; title: string; why: string }) =>
      `No effect is claimed for change ${f.number}, ${f.title}: ${f.why}`,
    undecided: (f: { number: string; title: string }) => `Change ${f.number}, ${f.title}, stays undecided.`,
    'single-pull': (f: { number: string; title: string }) =>
      `Change ${f.number}, ${f.title}, rests on one pull.`,
    unwatched: (f: { names: string }) =>
      `No sensor in the logs watched: ${f.names}. Nothing is said about them.`,
    drift: () =>
      'No earlier state was driven again, so a slow drift of the day can hide in the last changes.',
    fit: (f: { count: string }) =>
      `Of the fit review ${f.count} ${f.count === '1' ? 'point is' : 'points are'} open.`,
    lasting: () => 'How long engine and gearbox last at these settings was not measured and is not promised.',
  },

  cautions: 'Please keep in mind',
  cautionLines: [
    'The settings fit this engine with this fluid at this strength. Without fluid, or with another, they can destroy the engine in seconds.',
    'Methanol is toxic through skin and breath and burns with a flame that can’t be seen by day.',
    'The law of your place decides on road use, emissions and the storage of alcohol fuels; some work needs a licensed workshop.',
    'What is written here was measured on the day. It says what was found, and no more.',
  ],
  note: 'Notes',
  visit: {
    title: 'Against the last visit',
    otherTitle: 'Against another visit',
    other: 'Other visit',
    notEarlier:
      'This other visit was not begun before the one of this sheet, so it is not the last one: read the table the other way round.',
    lead: (name: string, date: string) =>
      `Beside the visit “${name}” of ${date}. What was set is as the car was left on each day.`,
    what: 'What',
    last: 'Last visit',
    now: 'This visit',
    judged: 'Compared',
    states: {
      same: 'the same',
      differs: 'differs',
      unknown: 'not known',
      'own-origin': 'each over its own first measurement',
    },
    names: {
      car: 'Car',
      basis: 'Power reckoned from',
      correction: 'Correction for weather',
      air: 'Density of the air',
      gear: 'Gear of the pulls',
      mass: 'Mass as driven',
      tyre: 'Rolling radius of the tyres',
      place: 'Where',
      boost: 'Boost, as set',
      spark: 'Spark',
      mixture: 'Mixture target',
      sprayStart: 'Spray starts at',
      nozzle: 'Nozzle',
      fluid: 'Fluid',
      fuel: 'Fuel, RON',
      band: 'Engine speeds that both days share',
      level: 'Levels of the same state',
    },
    basisOf: {
      'engine-speed': 'engine speed',
      'vehicle-speed': 'road speed',
      'torque-channel': 'torque as recorded',
      'power-channel': 'power as recorded',
    } as Readonly<Record<string, string>>,
    noCorrection: 'none',
    sprayOff: 'spray off',
    sparkCells: (count: number) =>
      count === 0
        ? 'The spark tables as left are the same, cell by cell.'
        : `The spark tables as left differ in ${count} ${count === 1 ? 'cell' : 'cells'}.`,
    powers: {
      baseline: 'First measurement of each day',
      'left-to-baseline': 'As left then, first measurement now',
      'as-left': 'As left on each day',
    },
    otherPowers: {
      baseline: 'First measurement of each visit',
      'left-to-baseline': 'As left there, first measurement here',
      'as-left': 'As left on each visit',
    },
    powerTitle: 'Mean wheel power of the two days',
    difference: 'Difference',
    over: (from: string, to: string) =>
      `Mean from ${from} to ${to}, the engine speeds that the pulls of both days share.`,
    notProven:
      'No difference in this table is proven. How far the same car reads apart from one day to another is not known; the ± holds only the scatter inside each day.',
    refused: (names: string) =>
      `The power of the two visits is not compared. These are not the same on both days, or not known: ${names}.`,
  },
  signatures: 'Handed over',
  received:
    'I have received this summary, and the fluid, the low-level light and the limits were explained to me.',
  tuner: 'Tuner',
  customer: 'Customer',
  date: 'Date',

  fluidOf: (parts: readonly string[], basis: string) => `${parts.join(', ')} (${basis})`,
  substances: { water: 'water', methanol: 'methanol', ethanol: 'ethanol' },
  bases: { poured: 'by volume as poured', finished: 'by volume of the mix', mass: 'by mass' },
};

export type HandoverPhrases = typeof handoverPhrases;
