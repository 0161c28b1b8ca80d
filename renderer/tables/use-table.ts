import { useMemo } from 'react';
import { fromSamples } from '../../core/contract/index.ts';
import type { Result } from '../../core/result/index.ts';
import { ok } from '../../core/result/index.ts';
import {
  ambientPressureOf,
  limitOfTable,
  type Session,
  type SessionTable,
} from '../../core/session/index.ts';
import {
  type CellChange,
  changesBetween,
  type EcuTable,
  type OperatingState,
  readTable,
} from '../../core/tables/index.ts';
import { useAnswer } from '../hooks/use-answer.ts';
import { useSession } from '../hooks/use-session.tsx';

/** A table of the session, read: as it stands, as last written down, and what lies between. */
export type TableNow = {
  readonly table: SessionTable;
  readonly now: EcuTable;
  readonly before: EcuTable;
  readonly changes: readonly CellChange[];
  readonly ambientPressure: number;
  /** In the table's unit; null where nobody has said. */
  readonly limit: number | null;
};

export function useTable(session: Session, table: SessionTable): Result<TableNow> {
  return useMemo(() => {
    const now = readTable(table.now);
    if (!now.ok) return now;
    const before = readTable(table.recorded);
    if (!before.ok) return before;
    const ambientPressure = ambientPressureOf(session);
    return ok({
      table,
      now: now.value,
      before: before.value,
      changes: changesBetween(before.value, now.value),
      ambientPressure,
      limit: limitOfTable(table, session.limits, ambientPressure),
    });
  }, [session, table]);
}

/** The logged states of the engine, one list a pull. */
export function useTrace(entryIds: readonly string[]): readonly (readonly OperatingState[])[] {
  const { snapshot } = useSession();
  const input = entryIds.length > 0 ? { entryIds: [...entryIds] } : null;
  const { value } = useAnswer('entries.trace', input, snapshot?.revision ?? 0, entryIds.join(' '));
  return useMemo(
    () =>
      (value?.pulls ?? []).map((pull) => {
        const [speed, boost] = [fromSamples(pull.engineSpeed_rad_s), fromSamples(pull.boost)];
        const [throttle, flow] = [fromSamples(pull.throttle), fromSamples(pull.fluidFlow)];
        return Array.from(
          speed,
          (engineSpeed_rad_s, i): OperatingState => ({
            engineSpeed_rad_s,
            boost: boost[i] ?? Number.NaN,
            throttle: throttle[i] ?? Number.NaN,
            fluidFlow: flow[i] ?? Number.NaN,
          }),
        );
      }),
    [value],
  );
}
