import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { base64, cssText, readLogo } from '../../../core/handover/index.ts';
import { LogoSchema } from '../../../core/session/index.ts';

const text = (s: string) => new TextEncoder().encode(s);
const png = (width: number, height: number, length = 40) => {
  const bytes = new Uint8Array(length);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  const view = new DataView(bytes.buffer);
  view.setUint32(16, width);
  view.setUint32(20, height);
  return bytes;
};
const jpeg = Uint8Array.from([
  ...[0xff, 0xd8, 0xff, 0xe0, 0, 4, 0, 0],
  ...[0xff, 0xc4, 0, 3, 0],
  ...[0xff, 0xc0, 0, 11, 8, 0, 120, 1, 64, 1, 1, 0x11, 0],
]);

describe('a logo', () => {
  it('is taken as PNG or JPEG, whatever its name says', () => {
    expect(readLogo(png(300, 80), 'logo.jpg')).toMatchObject({ ok: true, value: { width: 300, height: 80 } });
    const read = readLogo(jpeg, 'logo.png');
    expect(read).toMatchObject({ ok: true, value: { width: 320, height: 120 } });
    expect(read.ok && LogoSchema.safeParse(read.value).success).toBe(true);
    expect(read.ok && read.value.dataUrl.startsWith('data:image/jpeg;base64,/9j/')).toBe(true);
  });

  it.each([
    ['<svg onload="x"/>', 'handover/logo-is-drawing'],
    ['\uFEFF<?xml version="1.0"?><!-- a --><svg/>', 'handover/logo-is-drawing'],
    ['GIF89a', 'handover/logo-not-a-picture'],
    ['', 'handover/logo-not-a-picture'],
  ])('is refused otherwise, naming the file: %s', (content, code) => {
    expect(readLogo(text(content), 'logo.png')).toMatchObject({
      problems: [{ code, where: { file: 'logo.png' } }],
    });
  });

  it('is refused where it is too large, has no size, or an impossible one', () => {
    expect(readLogo(png(10, 10, 200_001), 'a')).toMatchObject({
      problems: [{ code: 'handover/logo-too-large', facts: { size_bytes: 200_001, most_bytes: 200_000 } }],
    });
    for (const broken of [png(0, 10), png(10, 4_000_000_000), png(1, 1).slice(0, 20), jpeg.slice(0, 14)])
      expect(readLogo(broken, 'a')).toMatchObject({ problems: [{ code: 'handover/logo-damaged' }] });
  });

  it('is written as base64 that others read', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        expect(base64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
      }),
      { numRuns: 50 },
    );
  });
});

describe('text in a style', () => {
  it('ends neither its string nor the style', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (any) => {
        expect(cssText(any)).toMatch(/^"[A-Za-z0-9 \\]*"$/);
      }),
      { numRuns: 50 },
    );
    expect(cssText('a"</style>')).toBe('"a\\22 \\3c \\2f style\\3e "');
    // The first text of any kind costs the generator seconds on a machine that is shared.
  });
});
