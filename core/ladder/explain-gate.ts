import type { Explanation } from '../units/index.ts';
import type { Gate, GateQuantity } from './gate.ts';

/** Which of the step's explanations foretells a gate. */
export const foretoldBy: Partial<Record<GateQuantity, string>> = {
  fluidFlow: 'delivery/nozzle-flow',
  injectorDuty: 'ladder/injector-duty',
  fuelPump: 'ladder/fuel-pump',
  mapSensor: 'ladder/manifold-pressure',
  boostCeiling: 'ladder/manifold-pressure',
  intake: 'charge/evaporation',
};

/** Where the limit of a gate was set. */
const limitSource: { readonly [Q in GateQuantity]: string } = {
  knock: 'limit: your limits; one event stops, two send back (common practice)',
  lambda: 'limit: your limits, else lambda 0.90 (common practice)',
  fluidPressure: 'limit: your limits',
  fluidFlow: 'limit: 85 % of the planned flow (common practice)',
  fuelPressure: 'limit: 95 % of the pressure at the start of the pull (common practice)',
  exhaust: 'limit: your limits, else 950 C (common practice)',
  injectorDuty: 'limit: your limits, else 85 % (common practice)',
  fuelPump: 'limit: 90 % of the delivery (common practice)',
  mapSensor: 'limit: your limits and 95 % of the sensor’s full scale (common practice), the lower',
  boostCeiling: 'limit: your limits',
  intake: 'limit: your limits, else 60 C (common practice)',
  fluidLeft: 'limit: reserve over tank, from the setup',
};

/** How the number of a gate is read out of the pulls; each is common practice. */
const reading: { readonly [Q in GateQuantity]: { readonly formula: string; readonly source: string } } = {
  knock: {
    formula: 'value = max(events, retarded)',
    source:
      'retarded: pulls in which the control took back 0.5 degrees of spark or more, as less is its housekeeping (common practice)',
  },
  lambda: {
    formula: 'value = max(lambda)',
    source: 'over the counted pulls, where boost is 80 % of the pull’s highest or more (common practice)',
  },
  fluidPressure: {
    formula: 'value = min(p)',
    source: 'over the counted pulls, where boost is 80 % of the pull’s highest or more (common practice)',
  },
  fluidFlow: { formula: 'value = max(q)', source: 'over the counted pulls (common practice)' },
  fuelPressure: {
    formula: 'value = min(p / p_start)',
    source: 'lowest of a pull over that at its start, the worst pull (common practice)',
  },
  exhaust: { formula: 'value = max(T)', source: 'over the counted pulls (common practice)' },
  injectorDuty: { formula: 'value = max(duty)', source: 'over the counted pulls (common practice)' },
  fuelPump: {
    formula: 'value = max(flow) / delivery',
    source: 'over the counted pulls; delivery at full boost, from the setup',
  },
  mapSensor: { formula: 'value = max(p)', source: 'over the counted pulls (common practice)' },
  boostCeiling: {
    formula: 'value = max(p)',
    source: 'over the counted pulls; without a boost channel the manifold’s less the air’s (common practice)',
  },
  intake: { formula: 'value = max(T)', source: 'over the counted pulls (common practice)' },
  fluidLeft: { formula: 'value = min(level)', source: 'of the last counted pull (common practice)' },
};

/** What a gate's measured number is and what it is held against; null where nothing was measured. */
export function explainReading(
  gate: Pick<Gate, 'quantity' | 'kind' | 'limit' | 'measured'>,
): Explanation | null {
  if (gate.measured === null) return null;
  const { formula, source } = reading[gate.quantity];
  return {
    id: 'ladder/gate-reading',
    formula,
    inputs: [
      { symbol: 'value', value: gate.measured, kind: gate.kind },
      { symbol: 'limit', value: gate.limit, kind: gate.kind },
    ],
    source: `${source}; ${limitSource[gate.quantity]}`,
    validRange: [],
  };
}

/** How close a gate came to its limit, or is foretold to come; null where nothing tells. */
export function explainGate(gate: Gate): Explanation | null {
  const worse = gate.predicted?.[gate.isLowest ? 0 : 1] ?? null;
  const told = gate.measured ?? worse;
  if (told === null) return null;
  return {
    id: 'ladder/gate',
    formula:
      gate.isLowest && gate.from <= gate.limit
        ? 'closeness = limit / value'
        : 'closeness = (value - start) / (limit - start)',
    inputs: [
      { symbol: 'value', value: told, kind: gate.kind },
      { symbol: 'start', value: gate.from, kind: gate.kind },
      { symbol: 'limit', value: gate.limit, kind: gate.kind },
    ],
    source: `${limitSource[gate.quantity]}; ${
      gate.measured === null
        ? 'value: foretold by the step'
        : 'value: the extreme of the counted pulls; lambda and fluid pressure where boost is 80 % of the pull’s highest or more'
    }`,
    validRange: [],
  };
}
