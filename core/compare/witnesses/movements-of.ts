import { type QuantityId, quantityIds } from '../../log/index.ts';
import { type Grid, onGrid } from '../band/grid.ts';
import { afterSetup, beforeSetup, type Row } from '../selection/rows.ts';
import { type Movement, movementOf } from './movement.ts';
import { shownOrder } from './quantity-rules.ts';

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
