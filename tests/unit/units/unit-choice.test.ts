import { describe, expect, it } from 'vitest';
import {
  imperialUnits,
  metricUnits,
  type ShownKind,
  type UnitChoice,
  UnitChoiceSchema,
} from '../../../core/units/index.ts';
import { createShow } from '../../../core/words/index.ts';

const without = (choice: UnitChoice, ...keys: ShownKind[]) =>
  Object.fromEntries(Object.entries(choice).filter(([key]) => !keys.includes(key as ShownKind)));
const tanks = ['tankVolume', 'smallVolume'] as const;
const slopes = ['forcePerSpeed', 'forcePerSpeedSquared'] as const;

describe('a stored choice of units', () => {
  it.each<[string, object]>([
    ['flow and inertia had no imperial unit', { inertia: 'kg m2', massFlow: 'g/s' }],
    ['tanks had none', {}],
  ])('that was imperial when %s is imperial still', (_, patch) => {
    expect(UnitChoiceSchema.parse({ ...without(imperialUnits, ...tanks), ...patch })).toEqual(imperialUnits);
  });

  it('that was imperial before a coast-down was fitted is so too, and a lambda gauge stays one', () => {
    const old = {
      ...without(imperialUnits, ...tanks, ...slopes),
      inertia: 'kg m2',
      massFlow: 'g/s',
      gaugeScale: null,
    };
    expect(UnitChoiceSchema.parse(old)).toEqual({ ...imperialUnits, gaugeScale: null });
  });

  it('that was metric stays metric', () => {
    expect(UnitChoiceSchema.parse(without(metricUnits, ...tanks, ...slopes))).toEqual(metricUnits);
  });

  it('that was mixed keeps every unit that was chosen, and that of volume for tanks', () => {
    const old = { ...without(metricUnits, ...tanks), boost: 'psi', volume: 'gal', massFlow: 'lb/h' };
    expect(UnitChoiceSchema.parse(old)).toEqual({
      ...metricUnits,
      boost: 'psi',
      massFlow: 'lb/h',
      tankVolume: 'gal',
      smallVolume: 'fl oz',
    });
  });

  it('of today is taken as it stands, also where it holds what imperial once was', () => {
    const chosen = { ...imperialUnits, inertia: 'kg m2', massFlow: 'g/s', tankVolume: 'L' };
    expect(UnitChoiceSchema.parse(chosen)).toEqual(chosen);
  });

  it.each([[{ ...metricUnits, boost: 'kW' }], [{ boost: 'psi', extra: 1 }], ['metric'], [null]])(
    'that is none is refused: %j',
    (stored) => {
      expect(UnitChoiceSchema.safeParse(stored).success).toBe(false);
    },
  );
});

it('a tank is told in gallons and a pull in fluid ounces under imperial units, displacement in litres', () => {
  const [metric, imperial] = [createShow('en', metricUnits), createShow('en', imperialUnits)];
  // 1 US gal is 231 in3, 3.785411784 L, and 128 US fl oz (NIST Special Publication 811, appendix B).
  expect(imperial.quantity(3.785411784e-3, 'tankVolume')).toBe('1.00\u00a0US gal');
  expect(imperial.quantity(25e-6, 'smallVolume')).toBe('0.85\u00a0US fl oz');
  expect(imperial.quantity(1.998e-3, 'volume')).toBe('2.0\u00a0L');
  expect(metric.quantity(4e-3, 'tankVolume')).toBe('4.0\u00a0L');
  expect(metric.quantity(25e-6, 'smallVolume')).toBe('25\u00a0mL');
});
