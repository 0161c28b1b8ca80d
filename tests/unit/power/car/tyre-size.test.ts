import { describe, expect, it } from 'vitest';
import { tyreSize } from '../../../../core/power/index.ts';
import { unwrap } from '../../../../core/result/index.ts';

describe('tyre size', () => {
  it('225/45 R17 rolls on 0.3076 m', () => {
    // 0.97 (17 * 0.0254 / 2 + 0.225 * 0.45)
    expect(unwrap(tyreSize('225/45 R17')).rollingRadius).toBeCloseTo(0.30764, 4);
  });

  it.each([
    '225/45R17',
    '225/45 ZR17 94W',
    'P225/45R17',
    '225/45-17',
    ' 225 / 45 r 17 ',
    '225/45/17',
    '225 45 17',
  ])('reads %s as the same tyre', (text) => {
    expect(unwrap(tyreSize(text)).freeRadius).toBeCloseTo(0.31715, 5);
  });

  it('195/50 R15 is smaller', () => {
    expect(unwrap(tyreSize('195/50 R15')).freeRadius).toBeCloseTo(0.288, 4);
  });

  it.each(['', 'R17', '17', '225/45', '25/45 R17', '225/45 R99', '225/5 R17', 'wide'])(
    'says that “%s” is no tyre size',
    (text) => {
      const found = tyreSize(text);
      expect(found.ok).toBe(false);
      expect(!found.ok && found.problems[0].code).toBe('power/bad-tyre');
    },
  );
});
