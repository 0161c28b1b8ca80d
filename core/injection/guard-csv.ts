import { fromSi } from '../units/index.ts';
import { csvText } from './csv.ts';
import type { GuardRow } from './guard-band.ts';

const round = (value: number, digits: number) => Number(value.toFixed(digits));

/**
 * The guard band as CSV to enter into an ECU or controller; units stand in the header.
 *
 * @param title  a line of its own on top, the user's own words; null for none
 */
export function guardCsv(rows: readonly GuardRow[], title: string | null = null): string {
  const header = [
    'boost_kPa',
    'flow_mL_min',
    'lowest_flow_mL_min',
    'highest_flow_mL_min',
    'pressure_kPa',
    'lowest_pressure_kPa',
    'highest_pressure_kPa',
  ];
  const flow = (value: number) => round(fromSi(value, 'mL/min'), 1);
  const pressure = (value: number) => round(value / 1e3, 1);
  return csvText([
    ...(title === null ? [] : [[title]]),
    header,
    ...rows.map((r) => [
      pressure(r.boost),
      flow(r.flow),
      flow(r.lowestFlow),
      flow(r.highestFlow),
      pressure(r.pressure),
      pressure(r.lowestPressure),
      pressure(r.highestPressure),
    ]),
  ]);
}
