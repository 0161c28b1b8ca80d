import { headingOver, waysByHeading } from '../../log/index.ts';
import type { LoggedRoll } from './coast-down.ts';

/** Which way each roll went by where its log says that the car was, 1 as the first; null where that does not tell. */
export function waysOfRolls(rolls: readonly LoggedRoll[]): (1 | -1 | null)[] {
  return waysByHeading(rolls.map((roll) => headingOver(roll.log, roll))).map((way) => way || null);
}
