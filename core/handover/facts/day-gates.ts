import type { Gate, GateQuantity } from '../../ladder/index.ts';
import { type Entry, entryGates, type Session } from '../../session/index.ts';
import { fileUnit, type ShownKind } from '../../units/index.ts';
import { edge } from './edge.ts';
import type { HandoverFacts } from './facts-schema.ts';
import type { HandoverSource } from './source.ts';

/** A gate as the car was left and at its closest over the day, SI. */
export type DayGate = {
  readonly quantity: GateQuantity;
  readonly kind: ShownKind;
  readonly limit: number;
  readonly isLowest: boolean;
  /** Of the last kept entry; null where it has no such gate. */
  readonly last: Gate | null;
  /** The gate that came closest, with the number of its entry; null where no sensor watched. */
  readonly closest: { readonly gate: Gate; readonly entry: number } | null;
};

const ofTheSpray: readonly GateQuantity[] = ['fluidPressure', 'fluidFlow', 'fluidLeft'];

/** Whether the spray was on by the ledger: its own entry, or one kept before. A pump that is off breaks no rule. */
function isSprayOn(session: Session, entry: Entry): boolean {
  const at = session.ledger.indexOf(entry);
  return (
    entry.kind === 'spray' ||
    session.ledger.slice(0, at).some((e) => e.kind === 'spray' && e.state === 'kept')
  );
}

/** Every stop rule of the session with the closest approach of all its driven entries, dropped ones too. */
export function dayGates({ session, pulls, last }: HandoverSource): readonly DayGate[] {
  const found = new Map<GateQuantity, DayGate>();
  session.ledger.forEach((entry, number) => {
    const own = pulls.find((p) => p.id === entry.id)?.pulls ?? [];
    if (own.length === 0) return;
    for (const gate of entryGates(session, own)) {
      if (ofTheSpray.includes(gate.quantity) && !isSprayOn(session, entry)) continue;
      const known = found.get(gate.quantity);
      const isCloser =
        gate.measured !== null && (gate.closeness ?? 0) > (known?.closest?.gate.closeness ?? -1);
      found.set(gate.quantity, {
        quantity: gate.quantity,
        kind: gate.kind,
        limit: gate.limit,
        isLowest: gate.isLowest,
        last: entry === last ? gate : (known?.last ?? null),
        closest: isCloser ? { gate, entry: number } : (known?.closest ?? null),
      });
    }
  });
  return [...found.values()];
}

/** The gates with the units that they have in files. */
export function gateFacts(gates: readonly DayGate[]): HandoverFacts['gates'] {
  return gates.map(({ quantity, kind, limit, isLowest, last, closest }) => {
    const unit = fileUnit(kind);
    return {
      quantity,
      unit,
      limit: edge(limit, unit) ?? limit,
      isLowest,
      asLeft: edge(last?.measured, unit),
      asLeftState: last?.state ?? 'unmeasured',
      closest: edge(closest?.gate.measured, unit),
      closestEntry: closest?.entry ?? null,
      closestShare: edge(closest?.gate.closeness, ''),
    };
  });
}
