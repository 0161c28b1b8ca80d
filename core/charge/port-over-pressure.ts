import type { Result } from '../result/index.ts';
import { ok } from '../result/index.ts';
import { type ChargePath, type ChargeState, chargeAlong } from './charge-along.ts';

/** Between two looks at the charge [Pa]: a straight line there is off by under 0.1 K. */
const spacing = 20e3;

function between(a: ChargeState, b: ChargeState, share: number): ChargeState {
  const at = (x: number, y: number) => x + share * (y - x);
  const parts = (x: ChargeState['air']['vapour'], y: ChargeState['air']['vapour']) => ({
    water: at(x.water, y.water),
    methanol: at(x.methanol, y.methanol),
    ethanol: at(x.ethanol, y.ethanol),
  });
  return {
    station: a.station,
    air: {
      ...a.air,
      pressure: at(a.air.pressure, b.air.pressure),
      temperature: at(a.air.temperature, b.air.temperature),
      vapour: parts(a.air.vapour, b.air.vapour),
    },
    liquid: {
      parts: parts(a.liquid.parts, b.liquid.parts),
      temperature: at(a.liquid.temperature, b.liquid.temperature),
    },
    density: at(a.density, b.density),
    evaporatedShare: at(a.evaporatedShare, b.evaporatedShare),
  };
}

/**
 * The charge at the port over manifold pressure, worked out where it is asked for and kept: a search asks for nearly
 * the same pressures again and again.
 *
 * @param pathAt  the way of the charge at a manifold pressure [Pa]
 * @param from    exact here and at every 20 kPa from it; a straight line between
 *
 * Errors: those of chargeAlong, at the pressures beside the one asked for.
 */
export function portOverPressure(
  pathAt: (manifoldPressure: number) => ChargePath,
  from: number,
): (manifoldPressure: number) => Result<ChargeState> {
  const known = new Map<number, Result<ChargeState>>();
  const node = (i: number): Result<ChargeState> => {
    const kept = known.get(i);
    if (kept) return kept;
    const along = chargeAlong(pathAt(from + i * spacing));
    const port = along.ok ? ok(along.value.port) : along;
    known.set(i, port);
    return port;
  };
  return (manifoldPressure) => {
    const place = (manifoldPressure - from) / spacing;
    const below = Math.floor(place);
    const first = node(below);
    if (!first.ok || place === below) return first;
    const second = node(below + 1);
    return second.ok ? ok(between(first.value, second.value, place - below)) : second;
  };
}
