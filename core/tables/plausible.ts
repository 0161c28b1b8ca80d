import type { Problem } from '../result/index.ts';
import { degrees, fromSi, tidy, toSi } from '../units/index.ts';
import { stateOfCell, type TableAxes } from './coverage.ts';
import type { EcuTable } from './ecu-table.ts';
import { type CellMeaning, cellFromSi, cellInSi, type TableKind } from './kind.ts';

type Bounds = readonly [number, number];

/** Past these no petrol engine is run: the number is a slip, or the kind or unit is wrong (common practice). SI. */
const possible: { readonly [K in TableKind]: Bounds } = {
  spark: [degrees(-30), degrees(70)],
  boost: [-100e3, 400e3],
  lambda: [0.5, 1.6],
};

/** Past these an engine under boost is broken in one pull (common practice). SI. */
const underBoost: { readonly [K in TableKind]: number } = {
  spark: degrees(50),
  boost: 400e3,
  lambda: 1.1,
};
/** From here on an engine counts as boosted [Pa gauge]: past what a barometer and a sensor can be off. */
const boosted = 20e3;

/**
 * Cells that no engine should get, each with its line and column; empty where there are none. A slip of the decimal
 * point is found here, before it is copied on.
 */
export function dangerousCells(
  table: EcuTable,
  meaning: CellMeaning,
  axes: TableAxes,
  ambientPressure: number,
): Problem[] {
  const problems: Problem[] = [];
  const { kind, unit } = meaning;
  const [lowest, highest] = possible[kind];
  const written = (si: number) => tidy(cellFromSi(si, meaning, ambientPressure));
  for (const [row, line] of table.values.entries())
    for (const [column, value] of line.entries()) {
      const si = cellInSi(value, meaning, ambientPressure);
      const where = { line: table.origin.row + row + 1, column: `${table.origin.column + column + 1}` };
      const { boost } = stateOfCell(table, axes, row, column, ambientPressure);
      // 1e-9: 70 degrees written as 70 must not fail by a rounding.
      if (si < lowest - 1e-9 || si > highest + 1e-9)
        problems.push({
          code: 'tables/cell-not-plausible',
          facts: { kind, unit, value, lowest: written(lowest), highest: written(highest) },
          where,
        });
      else if (boost > boosted && si > underBoost[kind] + 1e-9)
        problems.push({
          code: 'tables/cell-dangerous',
          facts: { kind, unit, value, highest: written(underBoost[kind]), boost },
          where,
        });
    }
  return problems;
}

/** Engine speeds that an engine turns at [rpm]; thousands written with a comma end up far below. */
const speeds: Bounds = [300, 20_000];

/** Axes that can't be what they are said to be. */
export function axisFaults(table: EcuTable, axes: TableAxes): Problem[] {
  const speed = axes.engineSpeed === 'across' ? table.across : table.down;
  const load = axes.engineSpeed === 'across' ? table.down : table.across;
  const problems: Problem[] = [];
  const top = Math.max(...speed);
  if (!(top >= speeds[0] * 5 && top <= speeds[1]))
    problems.push({ code: 'tables/no-engine-speed', facts: { highest: top } });
  const most = toSi(Math.max(...load), axes.load.unit);
  const isThrottle = axes.load.kind === 'throttle';
  // 130 %: a plate in degrees is told from one in percent; 6 bar: more than any manifold holds.
  if (isThrottle ? most > 1.3 || most < 0.3 : most > 600e3 || most < 10e3)
    problems.push({
      code: 'tables/load-not-plausible',
      facts: { highest: fromSi(most, axes.load.unit), unit: axes.load.unit },
    });
  return problems;
}
