import type { Note } from '../../result/index.ts';
import { gridMean } from '../band/grid.ts';
import { oddPull } from '../levels/outliers.ts';
import { factsOf } from './choose-pulls.ts';
import type { Row } from './rows.ts';

/** At most this share of a group's pulls is left out as odd: past that the group is simply rough. */
const mostShare = 0.34;

/**
 * Rows without the pulls that stand away from their fellows, over the band or in a third of it. Those of the two
 * sides judged are named; those of other entries only stop counting for repeatability.
 */
export function leaveOutOdd(rows: readonly Row[]): { readonly rows: Row[]; readonly leftOut: Note[] } {
  const groups = [...new Set(rows.map((r) => r.group))];
  const sizes = new Map(groups.map((g) => [g, rows.filter((r) => r.group === g).length]));
  const gone = new Map<string, number>();
  const leftOut: Note[] = [];
  let kept = [...rows];
  for (let round = 0; round < rows.length; round++) {
    const found = oddestOf(kept, groups);
    if (!found) break;
    const count = (gone.get(found.row.group) ?? 0) + 1;
    if (count > mostShare * (sizes.get(found.row.group) ?? 0)) break;
    gone.set(found.row.group, count);
    kept = kept.filter((r) => r !== found.row);
    if (found.row.chosen) {
      leftOut.push({
        code: 'compare/left-out-outlier',
        facts: { ...factsOf(found.row.chosen), share: Math.expm1(found.distance) },
      });
    }
  }
  return { rows: kept, leftOut };
}

const parts: readonly (readonly [number, number])[] = [
  [0, 1],
  [0, 1 / 3],
  [1 / 3, 2 / 3],
  [2 / 3, 1],
];

function oddestOf(rows: readonly Row[], groups: readonly string[]) {
  for (const [from, to] of parts) {
    const members = groups.map((g) => rows.filter((r) => r.group === g));
    const levels = members.map((group) =>
      group.map((r) => {
        const last = r.power.length - 1;
        return Math.log(gridMean(r.power.subarray(Math.round(from * last), Math.round(to * last) + 1)));
      }),
    );
    const odd = oddPull(levels, parts.length);
    const row = odd && members[odd.group]?.[odd.place];
    if (row) return { row, distance: odd.distance };
  }
  return null;
}
