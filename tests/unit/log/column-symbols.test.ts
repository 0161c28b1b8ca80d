import { describe, expect, it } from 'vitest';
import { columnSymbols, DerivedChannelSchema, symbolsIn } from '../../../core/log/index.ts';

describe('short names of columns for formulas', () => {
  const columns = [
    'Öl-Druck 2',
    "Fühler 'x' \\ y",
    'a+b*c',
    'Größe',
    'Grosse',
    'Groesse',
    'V',
    'boost',
    '2. EGT',
    '油圧',
  ];
  const symbols = columnSymbols(columns);

  it('are spelt from their headers, each once', () => {
    expect([...symbols.values()]).toEqual([
      'Oel_Druck_2',
      'Fuehler_x_y',
      'a_b_c',
      'Groesse',
      'Grosse',
      'Groesse_2',
      // A volt and a quantity keep their own meaning.
      'column_V',
      'column_boost',
      'column_2_EGT',
      'column_10',
    ]);
  });

  it('can all stand in a session', () => {
    for (const [column, symbol] of columnSymbols([...columns, 'x'.repeat(300)])) {
      const inputs = [{ symbol, column }];
      expect(
        DerivedChannelSchema.safeParse({ name: 'n', formula: symbol, kind: 'number', inputs }).success,
      ).toBe(true);
    }
  });

  it('are found in a formula that cannot be read yet', () => {
    expect([...symbolsIn('Oel_Druck_2 + (boost / 2 kPa')]).toEqual(['Oel_Druck_2', 'boost', 'kPa']);
  });
});
