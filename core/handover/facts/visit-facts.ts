import { bandOfDays } from '../../compare/index.ts';
import { sessionLedger } from '../../session/index.ts';
import { changesBetween, readTable, sameAxes } from '../../tables/index.ts';
import { edge, edgePair } from './edge.ts';
import type { HandoverFacts } from './facts-schema.ts';
import type { HandoverSource } from './source.ts';
import { visitConditionRows, visitSettingRows } from './visit-rows.ts';

type VisitFacts = NonNullable<HandoverFacts['visit']>;
type VisitPower = VisitFacts['power'][number];
type Level = { readonly mean: number; readonly half: number | null } | null;

/**
 * This visit against an earlier one of the same car. Power is laid side by side only where everything that it
 * rests on is known to be the same, over the engine speeds that the pulls of both days share. A difference is never
 * called proven: the pulls of one day tell how far pulls of that day scatter, and nothing of the spread from day
 * to day.
 *
 *   half of the difference = sqrt(half_last^2 + half_now^2)     both 95 %, independent days
 */
export function visitFacts(last: HandoverSource, now: HandoverSource): VisitFacts {
  const conditions = visitConditionRows(last, now);
  const obstacles: VisitFacts['obstacles'] = conditions.filter((r) => r.state !== 'same').map((r) => r.code);
  const band = bandOfDays([last.pulls, now.pulls]);
  if (!band) obstacles.push('band');
  const power = band && obstacles.length === 0 ? powerOf(last, now, band) : [];
  if (obstacles.length === 0 && power.every((p) => p.difference_kW === null)) obstacles.push('level');
  const { id, name, createdAt } = last.session;
  return {
    last: { id, name, createdAt },
    order: orderOf(createdAt, now.session.createdAt),
    conditions,
    settings: visitSettingRows(last, now),
    sparkCells: sparkCellsApart(last, now),
    obstacles,
    band_rpm: band && edgePair(band, 'rpm'),
    power: obstacles.length > 0 ? [] : power,
  };
}

/** Both are moments in UTC, written as ISO 8601 has it. */
function orderOf(last: string, now: string): VisitFacts['order'] {
  const apart = Date.parse(last) - Date.parse(now);
  return apart < 0 ? 'earlier' : apart > 0 ? 'later' : 'same-moment';
}

function powerOf(last: HandoverSource, now: HandoverSource, band: readonly [number, number]): VisitPower[] {
  const [before, after] = [last, now].map((visit) => {
    const { lines } = sessionLedger(visit.session, visit.pulls, band);
    const levelOf = (id: string | undefined): Level => lines.find((l) => l.entryId === id)?.level ?? null;
    return { baseline: levelOf(visit.session.ledger[0]?.id), left: levelOf(visit.last?.id) };
  });
  return [
    side('baseline', before?.baseline ?? null, after?.baseline ?? null),
    // Whether the car came back as it was left.
    side('left-to-baseline', before?.left ?? null, after?.baseline ?? null),
    side('as-left', before?.left ?? null, after?.left ?? null),
  ];
}

function side(what: VisitPower['what'], last: Level, now: Level): VisitPower {
  const shown = (level: Level) => {
    const mean_kW = edge(level?.mean, 'kW');
    return mean_kW === null ? null : { mean_kW, half_kW: edge(level?.half, 'kW') };
  };
  const hasBoth = last !== null && now !== null;
  const halves = hasBoth && last.half !== null && now.half !== null ? Math.hypot(last.half, now.half) : null;
  return {
    what,
    last: shown(last),
    now: shown(now),
    difference_kW: hasBoth ? edge(now.mean - last.mean, 'kW') : null,
    differenceHalf_kW: edge(halves, 'kW'),
    isProven: false,
  };
}

/** Cells in which the spark tables as left differ; null where either visit has none, or their axes differ. */
function sparkCellsApart(last: HandoverSource, now: HandoverSource): number | null {
  const [before, after] = [last, now].map(({ session }) => {
    const tables = session.tables.filter((t) => t.kind === 'spark');
    const [table] = tables;
    const read = table && tables.length === 1 ? readTable(table.now) : null;
    return table && read?.ok ? { unit: table.unit, axes: table.axes, table: read.value } : null;
  });
  if (!before || !after || before.unit !== after.unit) return null;
  if (JSON.stringify(before.axes) !== JSON.stringify(after.axes)) return null;
  return sameAxes(before.table, after.table).ok ? changesBetween(before.table, after.table).length : null;
}
