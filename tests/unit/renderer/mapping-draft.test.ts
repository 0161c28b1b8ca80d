import { describe, expect, it } from 'vitest';
import type { RunSummary } from '../../../core/contract/index.ts';
import {
  alikeRuns,
  mappingEdits,
  unitsFor,
  withMeaning,
  withQuantity,
} from '../../../renderer/columns/mapping-draft.ts';

const run = (id: string, columns: string[], set: object[] = []) =>
  ({
    record: { id, columns: set },
    columns: [
      ...columns.map((column) => ({ column, quantity: null, unit: '', confidence: 0, reason: null })),
      {
        column: 'Ratio',
        quantity: null,
        unit: '',
        confidence: 1,
        reason: { code: 'log/column-by-formula', facts: {} },
      },
    ],
  }) as unknown as RunSummary;

describe('withQuantity', () => {
  it('keeps a unit that still measures it and takes the usual one where it does not', () => {
    const psi = { column: 'P', quantity: 'boost', unit: 'psi' } as const;
    expect(withQuantity(psi, 'fuelPressure').unit).toBe('psi');
    expect(withQuantity(psi, 'intakeTemperature').unit).toBe('C');
    expect(withQuantity(psi, null)).toEqual({ ...psi, quantity: null });
  });

  it('offers the file’s own unit beside the usual ones', () => {
    expect(unitsFor('manifoldPressure', 'mbar')[0]).toBe('mbar');
    expect(unitsFor('manifoldPressure', 'kPa')).toEqual(unitsFor('manifoldPressure', ''));
    expect(unitsFor(null, 'kPa')).toEqual([]);
  });

  it('offers every unit that a file may have the quantity in, the usual ones first', () => {
    expect(unitsFor('boost', '').slice(0, 3)).toEqual(['bar', 'psi', 'kPa']);
    expect(unitsFor('boost', '')).toEqual(expect.arrayContaining(['mbar', 'inHg', 'kgf/cm2', 'Pa']));
    expect(unitsFor('pedal', '')).toEqual(['%', 'deg', '1', '1/255', 'V', 'mV']);
    expect(unitsFor('time', '')).toEqual(expect.arrayContaining(['s', 'ms', 'us', '1/20 s', '1/10000 s']));
    expect(unitsFor('injectorTime', '').slice(0, 2)).toEqual(['ms', 'us']);
    expect(unitsFor('injectorTime', '')).not.toContain('1/20 s');
    expect(unitsFor('gear', '')).toEqual(['']);
  });
});

describe('corrections', () => {
  const a = run('a', ['T', 'P'], [{ column: 'T', quantity: 'time', unit: 's' }]);
  const b = run('b', ['P', 'T']);
  const c = run('c', ['T', 'Q']);
  const draft = { P: { column: 'P', quantity: 'boost', unit: 'psi' } } as const;

  it('finds the logs with the same columns in any order, whatever formulas added', () => {
    expect(alikeRuns([a, b, c], a).map((r) => r.record.id)).toEqual(['b']);
  });

  it('goes to every log asked for and leaves earlier corrections of other columns', () => {
    expect(mappingEdits([a, b], draft)).toEqual([
      { type: 'run.set', runId: 'a', patch: { columns: [...a.record.columns, draft.P] } },
      { type: 'run.set', runId: 'b', patch: { columns: [draft.P] } },
    ]);
    const again = run('a', ['T', 'P'], [draft.P]);
    expect(mappingEdits([again], draft)).toEqual([
      { type: 'run.set', runId: 'a', patch: { columns: [draft.P] } },
    ]);
  });
});

describe('the first values of a column', () => {
  const speed = {
    column: 'V',
    quantity: 'vehicleSpeed',
    unit: 'km/h',
    confidence: 0.6,
    reason: null,
  } as const;
  const unknown = { ...speed, quantity: null, unit: '' } as const;

  it('are read anew with the unit that was chosen', () => {
    const [read] = withMeaning(speed, { column: 'V', quantity: 'vehicleSpeed', unit: 'mph' }, [50 / 3.6]);
    expect(read).toBeCloseTo(22.352, 6); // 50 mph in m/s, 1 mi = 1609.344 m
  });

  it('are read anew where a column that stood for nothing is given a quantity', () => {
    const meant = { column: 'V', quantity: 'intakeTemperature', unit: 'F' } as const;
    expect(withMeaning(unknown, meant, [86])[0]).toBeCloseTo(303.15, 9); // 86 °F is 30 °C
  });

  it('are those of the file where the column is to stand for nothing', () => {
    expect(withMeaning(speed, { column: 'V', quantity: null, unit: 'km/h' }, [10])[0]).toBeCloseTo(36, 9);
  });

  it('stay what they are while nothing was chosen', () => {
    const values = [1, 2];
    expect(withMeaning(speed, { column: 'V', quantity: 'vehicleSpeed', unit: 'km/h' }, values)).toBe(values);
  });
});
