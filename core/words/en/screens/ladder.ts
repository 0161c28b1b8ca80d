import type { GateAction, GateQuantity } from '../../../ladder/index.ts';
import { gateActionWords, gateNames } from '../ladder.ts';

const gates: { readonly [G in GateQuantity]: string } = gateNames;
const actions: { readonly [A in GateAction]: string } = gateActionWords;

export const ladder = {
  title: 'Ladder',
  gates,
  actions,
  cantYet: 'No ladder yet.',
  place: 'Where the pulls are driven',
  places: { street: 'Closed road', dyno: 'Dyno' },
  routine: (
    pulls: number,
    bothWays: boolean,
    coolDown: string,
    intake: string,
    coolant: string,
    returnAfter: number,
  ) =>
    `Each step: ${pulls} pulls${bothWays ? ', half of them each way' : ''}, ${coolDown} or more between, started with intake within ${intake} and coolant within ${coolant} of the first. An earlier entry again after every ${returnAfter} changes.`,
  steps: 'Steps to the target',
  n: 'No.',
  step: 'Change',
  half: 'half step',
  power: (unit: string) => `Power at the crank, ${unit}`,
  room: (unit: string) => `Spark left before knock, ${unit}`,
  duty: 'Injector duty',
  intake: (unit: string) => `Intake, ${unit}`,
  between: (low: string, high: string) => `${low} to ${high}`,
  above: (boost: string) => `above ${boost}`,
  gatesOf: (n: number, title: string) => `Stop rules of step ${n}: ${title}`,
  gatesWhy: 'Expected values are estimates. A rule that no channel watches is not passed: look yourself.',
  lastGates: 'Stop rules of the last entry, as driven',
  gate: 'Stop rule',
  limit: 'Limit',
  expected: 'Expected',
  measured: 'Measured',
  close: 'Of the way',
  ifClosed: 'If it closes',
  look: 'look yourself',
  below: (limit: string) => `below ${limit}`,
  atLeast: (limit: string) => `at least ${limit}`,
  states: { near: 'near', closed: 'closed' },
  ends: 'Why it ends there, and what rests on practice',
  stepOf: (n: number, count: number) => `Step ${n} of ${count}`,
  powerAfter: 'Power after it',
  roomAfter: 'Spark left after it',
  fluidAtPeak: 'Fluid at peak',
  take: 'Take this step',
  takeWhy:
    'It goes into the ledger as one change; undo takes it back. Set it in the engine control yourself.',
  taken: (title: string) => `In the ledger: ${title}`,
  notYet: (n: number) => `One change at a time: step ${n} comes first.`,
  firstThis: (now: string) => `Before any step: ${now}`,
  openBench: 'Open the bench',
  openHandover: 'Open the handover',
};
