/** Where pulls are driven: a closed road or a dyno. */
export const ladderPlaces = ['street', 'dyno'] as const;
export type LadderPlace = (typeof ladderPlaces)[number];

/** How each step is driven. */
export type Routine = {
  readonly place: LadderPlace;
  readonly pulls: number;
  /** Half of the pulls each way. */
  readonly bothWays: boolean;
  /** Between two pulls [s]. */
  readonly coolDown: number;
  /** Before the next pull, half width around the first one's start [K]. */
  readonly intakeWindow: number;
  /** The same of the coolant [K]. */
  readonly coolantWindow: number;
  /** After so many new entries an earlier one is driven again: A, B, A. */
  readonly returnAfter: number;
};

/**
 * Street: two each way, as wind and slope are bigger than most changes; dyno: three. 30 s to 2 min between pulls, intake
 * within 3 C and coolant within 5 C, an earlier entry again every four or five.
 *
 * Source: common practice.
 */
export const routines: { readonly [P in LadderPlace]: Routine } = {
  street: {
    place: 'street',
    pulls: 4,
    bothWays: true,
    coolDown: 120,
    intakeWindow: 3,
    coolantWindow: 5,
    returnAfter: 4,
  },
  dyno: {
    place: 'dyno',
    pulls: 3,
    bothWays: false,
    coolDown: 60,
    intakeWindow: 3,
    coolantWindow: 5,
    returnAfter: 5,
  },
};
