import type { SessionTable } from '../../core/session/index.ts';
import type { EcuTable, TableAxes } from '../../core/tables/index.ts';
import { unitOf } from '../../core/units/index.ts';
import type { Show } from '../../core/words/index.ts';

/** Cells keep the unit and the digits that they were written in: the control's, not the reader's. */
export function cellText(value: number, table: Pick<EcuTable, 'decimals'>, show: Show): string {
  return show.number(value, table.decimals);
}

/** A number with the unit of its table. */
export function withUnit(text: string, unit: string): string {
  const { symbol } = unitOf(unit);
  return symbol === '°' ? `${text}°` : `${text}\u00a0${symbol}`;
}

/** An axis value in full, for a sentence. */
export function axisText(value: number, show: Show): string {
  return show.number(value, digitsOf(value));
}

/** An axis value as the control writes it: a sign between thousands would only take room. */
export function headText(value: number, show: Show): string {
  const text = value.toFixed(digitsOf(value));
  return show.language === 'de' ? text.replace('.', ',') : text;
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
    speed: `${axisText(speed, show)}\u00a0${unitOf('rpm').symbol}`,
    load: withUnit(axisText(load, show), axes.load.unit),
  };
}

export function symbolOf(table: Pick<SessionTable, 'unit'>): string {
  return unitOf(table.unit).symbol;
}
