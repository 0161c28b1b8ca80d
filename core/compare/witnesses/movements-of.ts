import { type QuantityId, quantityIds } from '../../log/index.ts';
import type { Note } from '../../result/index.ts';
import { type Grid, onGrid } from '../band/grid.ts';
import type { Side } from '../notes.ts';
import { afterSetup, beforeSetup, type Row } from '../selection/rows.ts';
import { type Movement, movementOf } from './movement.ts';
import { quantityRules, shownOrder } from './quantity-rules.ts';

/** Judged by other means (ratio to engine speed, share of the pull), or no witness of how the engine was run. */
const elsewhere: ReadonlySet<QuantityId> = new Set([
  'vehicleSpeed',
  'gpsSpeed',
  'altitude',
  'limiterActive',
  'tractionControl',
]);

/** How far every quantity moved that both sides logged, scatter pooled over all rows. What a tuner asks first comes first. */
export function movementsOf(rows: readonly Row[], grid: Grid): Movement[] {
  const groups = [...new Set(rows.map((r) => r.group))];
  const judged = [groups.indexOf(beforeSetup), groups.indexOf(afterSetup)] as const;
  const rank = (q: QuantityId) => shownOrder.indexOf(q) + 1 || shownOrder.length + 1;
  const order = [...quantityIds].sort((a, b) => rank(a) - rank(b));
  const found: Movement[] = [];
  for (const quantity of order) {
    if (elsewhere.has(quantity)) continue;
    // Two names for one reading: gauge pressure speaks for both.
    if (quantity === 'manifoldPressure' && found.some((m) => m.quantity === 'boost')) continue;
    const curves = groups.map((group) =>
      rows.flatMap((row) => {
        const curve = row.group === group ? row.pull.curves[quantity] : undefined;
        return curve ? [onGrid(row.pull.power.engineSpeed_rad_s, curve, grid)] : [];
      }),
    );
    if (judged.some((j) => (curves[j]?.length ?? 0) === 0)) continue;
    const movement = movementOf(quantity, curves, judged);
    if (movement) found.push(movement);
  }
  return found;
}

/**
 * Channels of what is set that one side alone logged, where no other channel of the same control was heard on
 * both: whether it moved can't be told. A gauge on one side and an absolute sensor without a barometer on the
 * other are such a case.
 */
export function lostWitnesses(rows: readonly Row[], movements: readonly Movement[]): Note[] {
  const controlOf = (q: QuantityId) => quantityRules[q]?.control ?? null;
  const heard = new Set(movements.map((m) => controlOf(m.quantity)));
  const logged = (group: string, quantity: QuantityId) =>
    rows.some((r) => r.group === group && r.pull.curves[quantity] !== undefined);
  const notes: Note[] = [];
  for (const quantity of shownOrder) {
    const control = controlOf(quantity);
    if (control === null || heard.has(control)) continue;
    const [b, a] = [logged(beforeSetup, quantity), logged(afterSetup, quantity)];
    if (b === a) continue;
    const side: Side = b ? 'after' : 'before';
    notes.push({ code: 'compare/witness-lost', facts: { quantity, side } });
    heard.add(control);
  }
  return notes;
}
