import type { PullEvidence } from '../compare/index.ts';
import {
  fuelPumpDelivery,
  type Gate,
  gateQuantities,
  gatesOf,
  ladderLimits,
  measuredOf,
} from '../ladder/index.ts';
import { celsius } from '../units/index.ts';
import type { Session } from './session.ts';

/** Where nothing is known of the air (ISO 2533: standard pressure; 20 C common practice). */
const usualAir = { temperature: celsius(20), pressure: 101_325 } as const;

/**
 * How close the pulls of one entry came to the session's limits, the gravest first, from its logs alone: it needs no setup, so it
 * stands while the setup sheet is still empty.
 *
 * @param pulls  the entry's pulls that count
 *
 * The spray counts as on where fluid flowed. Without a setup neither its planned flow nor its reserve is known, and
 * those gates are left out.
 */
export function entryGates(session: Session, pulls: readonly PullEvidence[]): readonly Gate[] {
  const measured = measuredOf(pulls);
  const { conditions, limits, setup } = session;
  const { tank_L = null, reserve_L = null } = setup?.fluidSystem ?? {};
  const mapSensor_kPa = setup?.engine.mapSensor_kPa ?? null;
  const gates = gatesOf(measured, {
    limits: ladderLimits(limits),
    ambientTemperature: conditions.ambient_C === null ? usualAir.temperature : celsius(conditions.ambient_C),
    ambientPressure: conditions.barometer_kPa === null ? usualAir.pressure : conditions.barometer_kPa * 1e3,
    mapSensor: mapSensor_kPa === null ? null : mapSensor_kPa * 1e3,
    fuelPump: setup === null ? null : fuelPumpDelivery(setup),
    isSprayOn: (measured.fluidFlow ?? 0) > 0,
    plannedFlow: null,
    reserveShare: tank_L === null || reserve_L === null ? null : reserve_L / tank_L,
  });
  const rank = (gate: Gate) => gateQuantities.indexOf(gate.quantity);
  return [...gates].sort((a, b) => rank(a) - rank(b));
}
