import type { RequestOutput } from '../../core/contract/index.ts';
import type { ScreenWords, Show } from '../../core/words/index.ts';

export type RideGate = RequestOutput<'entries.gates'>['gates'][number];

/** Always in sight, as they end most sessions; the others only once they are close. */
const always: readonly RideGate['quantity'][] = ['knock', 'lambda', 'intake', 'injectorDuty', 'fluidLeft'];

/** No level and no reserve is known: the tank is still worth a look. */
const unseen: RideGate = {
  quantity: 'fluidLeft',
  kind: 'share',
  limit: 0,
  isLowest: true,
  measured: null,
  state: 'unmeasured',
  ifClosed: 'refill',
};

/** The gates worth a glance, in a fixed place each. */
export function gatesInSight(gates: readonly RideGate[]): readonly RideGate[] {
  const sorted = always.flatMap(
    (q) => gates.find((g) => g.quantity === q) ?? (q === 'fluidLeft' ? unseen : []),
  );
  const more = gates.filter(
    (g) => !always.includes(g.quantity) && (g.state === 'near' || g.state === 'closed'),
  );
  return [...sorted, ...more];
}

/** Digits that a glance can take in. */
function valueText(value: number, { kind }: RideGate, show: Show): string {
  // The name stands beside it; only a ratio needs its unit.
  if (kind === 'lambda') {
    return show.units.gaugeScale === null ? show.bare(value, kind, 2) : show.quantity(value, kind, 1);
  }
  return kind === 'temperature' || kind === 'share'
    ? show.quantity(value, kind, 0)
    : show.quantity(value, kind);
}

/** What was measured, in words where nothing was. */
export function gateValue(gate: RideGate, show: Show, said: ScreenWords['ride']): string {
  if (gate.measured === null) return gate.quantity === 'fluidLeft' ? said.lookAtTank : said.unmeasured;
  if (gate.quantity === 'knock') {
    return gate.measured === 0 ? said.noKnock : said.knocks(show.number(gate.measured));
  }
  return valueText(gate.measured, gate, show);
}

/** What it is held against. */
export function gateLimit(gate: RideGate, show: Show, said: ScreenWords['ride']): string {
  if (gate.measured === null) return '';
  if (gate.quantity === 'knock') return said.knockLimit(gate.limit);
  // A long unit stands with the value already, and would push it out of the row.
  const isShort = ['lambda', 'temperature', 'share'].includes(gate.kind);
  const limit = isShort ? valueText(gate.limit, gate, show) : show.bare(gate.limit, gate.kind);
  return gate.isLowest ? said.lowest(limit) : said.limit(limit);
}
