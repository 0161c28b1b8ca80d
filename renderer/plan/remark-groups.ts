import type { Note } from '../../core/result/index.ts';

/** In the order in which they are read: what can harm, what the spray does, what the numbers rest on. */
export const remarkGroups = ['harm', 'spray', 'basis'] as const;
export type RemarkGroup = (typeof remarkGroups)[number];

/** Too little fluid, too late or at the wrong place: knock or a stopped piston can follow. */
const harm: ReadonlySet<Note['code']> = new Set([
  'fit/lock-volume',
  'injection/ratio-quenches',
  'injection/nozzle-too-small',
  'injection/none-large-enough',
  'injection/mid-range-cost',
  'injection/under-fed-at-peak',
  'injection/controller-cannot',
  'injection/fluid-too-late',
  'injection/fluid-never-arrives',
  'injection/start-above-peak',
  'injection/tank-empties',
  'injection/reserve-too-small',
  'delivery/pump-droops',
  'delivery/line-takes-much',
  'delivery/fluid-arrives-late',
]);

const basis: ReadonlySet<Note['code']> = new Set([
  'injection/fuel-from',
  'injection/practice-default',
  'injection/rule-of-thumb',
  'injection/endurance-from-log',
  'injection/log-differs',
  'delivery/pump-curve-unknown',
  'delivery/bucket-point-off',
  'delivery/bucket-points-disagree',
  'delivery/bucket-overrides',
  'delivery/bucket-far-from-rating',
]);

/** Where a remark of a plan belongs. */
export function remarkGroupOf({ code }: Note): RemarkGroup {
  if (harm.has(code)) return 'harm';
  return basis.has(code) ? 'basis' : 'spray';
}
