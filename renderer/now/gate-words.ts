import type { Gate } from '../../core/ladder/index.ts';
import type { ScreenWords, Show } from '../../core/words/index.ts';

/** What a row needs of a gate, from the ladder or from the host's own answer. */
export type ShownGate = Pick<Gate, 'quantity' | 'kind' | 'limit' | 'isLowest' | 'measured' | 'state'>;

/** A gate in words: its name, what was measured with the limit beside it, and the two apart for a list. */
export function gateWords(
  gate: ShownGate,
  screens: ScreenWords,
  show: Show,
): { name: string; value: string; measured: string; bound: string } {
  const said = screens.now;
  const name = screens.ride.gate[gate.quantity];
  if (gate.measured === null) {
    return { name, value: said.gateStates.unmeasured, measured: said.gateStates.unmeasured, bound: '' };
  }
  const digits = digitsOf(gate, show);
  const join = gate.kind === 'number' ? said.gateOf : gate.isLowest ? said.gateLowest : said.gateLimit;
  const bound = said.gateBound[gate.kind === 'number' ? 'number' : gate.isLowest ? 'lowest' : 'limit'];
  return {
    name,
    value: join(show.bare(gate.measured, gate.kind, digits), show.quantity(gate.limit, gate.kind, digits)),
    measured: show.quantity(gate.measured, gate.kind, digits),
    bound: bound(show.bare(gate.limit, gate.kind, digits)),
  };
}

/** Digits that a limit is set by: a hundredth of lambda or a tenth on a gauge's scale, whole degrees, whole percent. */
function digitsOf(gate: ShownGate, show: Show): number | undefined {
  switch (gate.kind) {
    case 'lambda':
      return show.units.gaugeScale === null ? 2 : 1;
    case 'number':
    case 'temperature':
    case 'share':
    case 'pressure':
      return 0;
    case 'fluidPressure':
      return 1;
    default:
      return undefined;
  }
}

/** 0 far off, 1 at the limit, as the thin measure draws it; the ladder's own number where there is one. */
export function measureOf(gate: ShownGate & { readonly closeness?: number | null }): number {
  if (gate.closeness !== undefined) return Math.min(1, gate.closeness ?? 0);
  if (gate.measured === null || gate.measured <= 0 || gate.limit <= 0) return 0;
  return Math.min(1, gate.isLowest ? gate.limit / gate.measured : gate.measured / gate.limit);
}
