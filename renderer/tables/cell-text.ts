import type { CellMeaning, EcuTable, LoadUnit, TableAxes } from '../../core/tables/index.ts';
import { unitOf } from '../../core/units/index.ts';
import type { Show } from '../../core/words/index.ts';

/** Cells keep the unit and the digits that they were written in: the control's, not the reader's. */
export function cellText(value: number, table: Pick<EcuTable, 'decimals'>, show: Show): string {
  return show.number(value, table.decimals);
}

/** A number with its unit as it is printed. */
export function withUnit(text: string, symbol: string): string {
  return symbol === '°' ? `${text}°` : `${text}\u00a0${symbol}`;
}

/** The unit of an axis of load; a pressure says what it counts from. */
export function loadSymbol({ kind, unit }: LoadUnit, show: Show): string {
  return show.symbol(unit, kind === 'throttle' ? 'share' : kind === 'absolute' ? 'pressure' : 'boost');
}

/** The unit of the cells. */
export function symbolOf(table: CellMeaning, show: Show): string {
  if (table.kind === 'boost') return show.symbol(table.unit, table.isAbsolute ? 'pressure' : 'boost');
  return unitOf(table.unit).symbol;
}

/** An axis value in full, for a sentence. */
export function axisText(value: number, show: Show): string {
  return show.number(value, digitsOf(value));
}

/** An axis value as the control writes it: a sign between thousands would only take room. */
export function headText(value: number, show: Show): string {
  return show.plain(value, digitsOf(value));
}

function digitsOf(value: number): number {
  return Math.min(3, `${value}`.split('.')[1]?.length ?? 0);
}

/** Both axis values of a cell, engine speed first. */
export function placeText(
  axes: TableAxes,
  across: number,
  down: number,
  show: Show,
): { speed: string; load: string } {
  const [speed, load] = axes.engineSpeed === 'across' ? [across, down] : [down, across];
  return {
    speed: withUnit(axisText(speed, show), show.symbol('rpm', 'engineSpeed')),
    load: withUnit(axisText(load, show), loadSymbol(axes.load, show)),
  };
}
