import type { Session, SessionTable } from '../../session/index.ts';
import { differenceView, readTable } from '../../tables/index.ts';
import type { HandoverFacts } from './facts-schema.ts';

type SparkTableFacts = HandoverFacts['sparkTables'][number];

/**
 * What the spark tables say in the car as left against what they said when they were read: cell by cell, a line for
 * each load and a column for each engine speed, whichever way the control writes them. Degrees before top dead
 * centre; a plus is earlier.
 */
export function sparkTableFacts(session: Session): SparkTableFacts[] {
  const without = session.ledger.flatMap((entry, number) =>
    entry.kind === 'spark' && entry.state === 'kept' && entry.change !== null && !entry.change.table
      ? [number]
      : [],
  );
  return session.tables.flatMap((table) => (table.kind === 'spark' ? factsOf(table, without) : []));
}

function factsOf(table: SessionTable, changesWithout: number[]): SparkTableFacts[] {
  const [asRead, now] = [readTable(table.asRead), readTable(table.now)];
  if (!asRead.ok || !now.ok) return [];
  const view = differenceView(asRead.value, now.value);
  if (!view.ok) return [];
  const { engineSpeed, load } = table.axes;
  const isAcross = engineSpeed === 'across';
  const { across, down, values } = now.value;
  const turned = (grid: readonly (readonly number[])[]): number[][] =>
    isAcross ? grid.map((row) => [...row]) : across.map((_, c) => grid.map((row) => row[c] ?? 0));
  return [
    {
      name: table.name,
      readAt: table.readAt,
      isInLedger: table.now === table.recorded,
      engineSpeed_rpm: [...(isAcross ? across : down)],
      load: { kind: load.kind, unit: load.unit, values: [...(isAcross ? down : across)] },
      asLeft_deg: turned(values),
      change_deg: turned(view.value.delta),
      cells: view.value.changes.length,
      changesWithout,
    },
  ];
}
