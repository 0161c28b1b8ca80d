import { describe, expect, it } from 'vitest';
import {
  correctionsFor,
  type MappingProfile,
  mostProfiles,
  withCorrections,
  withoutCorrections,
} from '../../../../core/log/index.ts';

const columns = ['Time (s)', 'P1', 'Engine Speed (rpm)'];
const boost = { column: 'P1', quantity: 'boost', unit: 'kPa' } as const;

describe('corrections kept for logs with the same columns', () => {
  it('come back for the same columns in any order, marked as taken over', () => {
    const kept = withCorrections([], columns, [boost]);
    expect(correctionsFor(kept, [...columns].reverse())).toEqual([{ ...boost, isFromProfile: true }]);
    expect(correctionsFor(kept, [...columns, 'P2'])).toEqual([]);
  });

  it('are laid over earlier ones, column by column', () => {
    const first = withCorrections([], columns, [boost, { ...boost, column: 'Time (s)', quantity: null }]);
    const second = withCorrections(first, columns, [{ ...boost, unit: 'bar' }]);
    expect(second).toHaveLength(1);
    expect(correctionsFor(second, columns).map((m) => [m.column, m.quantity, m.unit])).toEqual([
      ['Time (s)', null, 'kPa'],
      ['P1', 'boost', 'bar'],
    ]);
  });

  it('are forgotten for these columns alone', () => {
    const two = withCorrections(withCorrections([], columns, [boost]), ['P1'], [boost]);
    const left = withoutCorrections(two, columns);
    expect(correctionsFor(left, columns)).toEqual([]);
    expect(correctionsFor(left, ['P1'])).toHaveLength(1);
  });

  it('push out the oldest where there are too many', () => {
    let kept: MappingProfile[] = [];
    for (let i = 0; i <= mostProfiles; i++) kept = withCorrections(kept, [`c${i}`, 'P1'], [boost]);
    expect(kept).toHaveLength(mostProfiles);
    expect(correctionsFor(kept, ['c0', 'P1'])).toEqual([]);
    expect(correctionsFor(kept, [`c${mostProfiles}`, 'P1'])).toHaveLength(1);
  });

  it('with a unit that measures nothing are left out, so that the log can be read', () => {
    expect(correctionsFor(withCorrections([], columns, [{ ...boost, unit: 'furlong' }]), columns)).toEqual(
      [],
    );
  });
});
