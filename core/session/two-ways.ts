import { type EntryPulls, waysOf } from '../compare/index.ts';
import { type Car, distancePerRadian, practice, type TwoWay, twoWayDisagreement } from '../power/index.ts';
import type { Note } from '../result/index.ts';

/**
 * What the road or the wind did to pulls that were driven both ways, where it is clear: the note of the entry that
 * tells it best. Verdicts average the ways out; whoever reads a single pull must know.
 *
 * Only powers from acceleration, worked out as on a level road in one gear, can tell.
 */
export function roadNotes(entries: readonly EntryPulls[], car: Car, isLevel: boolean): readonly Note[] {
  if (!isLevel) return [];
  const clear = entries.flatMap(({ pulls }) => bothWays(pulls, car) ?? []).filter((found) => found.isClear);
  clear.sort((a, b) => a.error - b.error);
  return clear[0]?.notes ?? [];
}

function bothWays(pulls: EntryPulls['pulls'], car: Car): TwoWay | null {
  const gear = pulls[0]?.gear ?? null;
  const distance = distancePerRadian(car, gear);
  if (!distance.ok) return null;
  const ways = waysOf(pulls);
  const accelerated = (way: number) =>
    pulls
      .filter((p, i) => ways[i] === way && p.gear === gear)
      .filter((p) => p.power.basis === 'engine-speed' || p.power.basis === 'vehicle-speed')
      .map((p) => p.power);
  const [out, back] = [accelerated(1), accelerated(-1)];
  // One pull each way tells nothing of how such pulls repeat.
  if (out.length + back.length < 3) return null;
  const road = distance.value.distance / (1 + (car.tyreSlip ?? practice.tyreSlip));
  const found = twoWayDisagreement({ out, back }, car, road);
  return found.ok ? found.value : null;
}
