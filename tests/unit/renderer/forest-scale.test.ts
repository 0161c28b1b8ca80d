import { describe, expect, it } from 'vitest';
import type { LedgerLine } from '../../../core/contract/index.ts';
import { imperialUnits, metricUnits } from '../../../core/units/index.ts';
import { createShow } from '../../../core/words/index.ts';
import { forestScale } from '../../../renderer/ledger/forest-scale.ts';

/** Lines of a ledger by their effects and intervals [W]. */
const lines = (effects: readonly (readonly [effect: number, low: number, high: number])[]) =>
  effects.map(([effect, low, high]) => ({
    verdict: { kind: 'gain', effect, interval95: [low, high] },
  })) as unknown as readonly LedgerLine[];
const day = lines([
  [-200, -1200, 800],
  [6900, 5800, 8000],
  [1900, 1000, 2800],
]);

describe('the labels over the ledger', () => {
  it('are as many as stand apart in the reader’s units', () => {
    const texts = (show: Parameters<typeof forestScale>[1]) =>
      forestScale(day, show)?.ticks.map((t) => t.text);
    expect(texts(createShow('en', metricUnits))).toEqual(['0', '+2', '+4', '+6', '+8']);
    expect(texts(createShow('en', imperialUnits))).toEqual(['0', '+5', '+10']);
    expect(texts(createShow('de', imperialUnits))).toEqual(['0', '+5', '+10']);
  });

  it('hold zero, whatever the effects', () => {
    for (const effect of [-90_000, -3, 12, 4_000, 123_456]) {
      const scale = forestScale(
        lines([[effect, effect - 500, effect + 500]]),
        createShow('de', imperialUnits),
      );
      expect(scale?.ticks.map((t) => Number(t.text.replace(',', '.')))).toContain(0);
    }
  });
});
