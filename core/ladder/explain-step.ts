import type { Plan, Setup } from '../injection/index.ts';
import { type Explanation, toSi } from '../units/index.ts';
import { fuelPumpAt, fuelPumpDelivery } from './fuel-pump.ts';
import { injectorDutyAt } from './injector-duty.ts';

/** Where a step's numbers are asked for. */
export type ExplainedAt = {
  readonly setup: Setup;
  readonly plan: Plan;
  /** Absolute [Pa]. */
  readonly ambientPressure: number;
  /** Gauge [Pa]. */
  readonly boost: number;
  /** Of the fuel's air demand where a loop cuts petrol for it, else 0. */
  readonly alcoholShare: number;
};

/** Injector duty at a boost; null where none is known. */
export function explainDuty(at: ExplainedAt): Explanation | null {
  const { setup, plan, ambientPressure, boost, alcoholShare } = at;
  const duty = injectorDutyAt(setup, plan, ambientPressure, boost, alcoholShare);
  const { injectors } = setup.engine;
  if (duty === null || !injectors) return null;
  const isLogged = injectors.duty.length > 0;
  return {
    id: 'ladder/injector-duty',
    formula: isLogged
      ? 'd = max over the pull of d_i (p_a + b) / (p_a + b_i) (1 - s)'
      : 'd = m_fuel (1 - s) / (n q rho sqrt(dp / dp_r))',
    inputs: [
      { symbol: 'b', value: boost, kind: 'boost' },
      { symbol: 'p_a', value: ambientPressure, kind: 'pressure' },
      { symbol: 's', value: alcoholShare, kind: 'share' },
      ...(isLogged
        ? [
            {
              symbol: 'd_i, highest logged',
              value: Math.max(...injectors.duty.map((p) => p.duty_percent / 100)),
              kind: 'share' as const,
            },
          ]
        : [
            {
              symbol: 'm_fuel',
              value: plan.fuel.at(plan.path.peakSpeed_rad_s, boost),
              kind: 'massFlow' as const,
            },
            { symbol: 'n', value: injectors.count, kind: 'number' as const },
            { symbol: 'q', value: toSi(injectors.flow_mL_min, 'mL/min'), kind: 'volumeFlow' as const },
          ]),
      { symbol: 'd', value: duty, kind: 'share' },
    ],
    source: isLogged
      ? 'duty as logged, raised with the air; fuel pressure taken to follow the manifold'
      : 'fuel of the plan over the static flow of the injectors; continuity',
    validRange: [{ symbol: 'd', from: 0, to: 1, kind: 'share' }],
  };
}

/** Fuel needed over what the pump delivers; null where no pump is known. */
export function explainPump(at: ExplainedAt): Explanation | null {
  const { setup, plan, boost, alcoholShare } = at;
  const [share, delivery] = [fuelPumpAt(setup, plan, boost, alcoholShare), fuelPumpDelivery(setup)];
  if (share === null || delivery === null) return null;
  return {
    id: 'ladder/fuel-pump',
    formula: 'share = m_fuel (1 - s) / m_pump',
    inputs: [
      {
        symbol: 'm_fuel',
        value: plan.fuel.at(plan.path.peakSpeed_rad_s, boost),
        kind: 'massFlow',
      },
      { symbol: 's', value: alcoholShare, kind: 'share' },
      { symbol: 'm_pump', value: delivery, kind: 'massFlow' },
      { symbol: 'share', value: share, kind: 'share' },
    ],
    source: 'continuity; planned to 90 % of the delivery, as pumps age and voltage sags (common practice)',
    validRange: [{ symbol: 'share', from: 0, to: 1, kind: 'share' }],
  };
}

/** Absolute pressure in the manifold. */
export function explainManifold(ambientPressure: number, boost: number): Explanation {
  return {
    id: 'ladder/manifold-pressure',
    formula: 'p = p_a + b',
    inputs: [
      { symbol: 'p_a', value: ambientPressure, kind: 'pressure' },
      { symbol: 'b', value: boost, kind: 'boost' },
      { symbol: 'p', value: ambientPressure + boost, kind: 'pressure' },
    ],
    source: 'definition; the sensor is kept 5 % below its end, where it reads flat (common practice)',
    validRange: [{ symbol: 'b', from: 0, to: 250e3, kind: 'boost' }],
  };
}
