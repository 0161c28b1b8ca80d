import type { QuantityId } from '../../log/index.ts';
import type { NoteFacts } from '../../result/index.ts';
import { quantityNames } from './quantities.ts';

/** Why two entries can't be compared. */
export type RefusalCode = Extract<
  keyof NoteFacts,
  | 'compare/no-pulls'
  | 'compare/same-pull'
  | 'compare/other-gear'
  | 'compare/other-gear-by-speeds'
  | 'compare/other-basis'
  | 'compare/other-correction'
  | 'compare/other-mass'
  | 'compare/other-rolling'
  | 'compare/other-direction'
  | 'compare/no-common-band'
  | 'compare/weather-apart'
  | 'compare/weather-beyond'
  | 'compare/also-moved'
  | 'compare/more-than-one'
  | 'compare/declared-missing'
  | 'compare/knock-retard'
  | 'compare/knock-events'
  | 'compare/limiter'
  | 'compare/intervention'
  | 'compare/wheel-spin'
  | 'compare/intake-apart'
>;

export type ShortReasons = { readonly [C in RefusalCode]: (facts: NoteFacts[C]) => string };

const inText = (q: QuantityId) => quantityNames[q].toLowerCase();

/** A reason in a few words, for a line of the ledger; the bench has the sentence with its numbers. */
export const shortReasons: ShortReasons = {
  'compare/no-pulls': (f) => `no pull counts ${f.side}`,
  'compare/same-pull': () => 'one recording on both sides',
  'compare/other-gear': () => 'another gear',
  'compare/other-gear-by-speeds': () => 'another gear',
  'compare/other-basis': () => 'power from another source',
  'compare/other-correction': () => 'another correction',
  'compare/other-mass': () => 'another mass',
  'compare/other-rolling': () => 'another tyre or slip',
  'compare/other-direction': () => 'driven the other way',
  'compare/no-common-band': () => 'no common band of engine speeds',
  'compare/weather-apart': () => 'other air, no correction',
  'compare/weather-beyond': () => 'other air, beyond correction',
  'compare/also-moved': (f) => `${inText(f.quantity)} moved as well`,
  'compare/more-than-one': () => 'more than one thing moved',
  'compare/declared-missing': () => 'the change is not in the data',
  'compare/knock-retard': () => 'knock control at work',
  'compare/knock-events': () => 'knock',
  'compare/limiter': () => 'a limiter was active',
  'compare/intervention': () => 'traction or torque control cut in',
  'compare/wheel-spin': () => 'the wheels spun',
  'compare/intake-apart': () => 'intake air too far apart',
};
