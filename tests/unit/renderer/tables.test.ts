import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { gridAction, isInBlock } from '../../../renderer/tables/grid-keys.ts';
import { heatColour, heatOfDifference, heatOfValue, mostInk } from '../../../renderer/tables/heat-share.ts';
import { bytesOf, readTableFile } from '../../../renderer/tables/table-bytes.ts';

const key = (name: string, more: object = {}) => ({
  key: name,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  repeat: false,
  ...more,
});
const at = { row: 3, column: 4 };
const act = (name: string, more: object = {}) => gridAction(key(name, more), at, 16, 12);

describe('the keys of the grid', () => {
  it.each([
    ['ArrowUp', {}, { row: 2, column: 4 }],
    ['ArrowRight', {}, { row: 3, column: 5 }],
    ['PageDown', {}, { row: 11, column: 4 }],
    ['PageUp', {}, { row: 0, column: 4 }],
    ['Home', {}, { row: 3, column: 0 }],
    ['End', { ctrlKey: true }, { row: 15, column: 11 }],
  ])('%s %o', (name, more, to) => {
    expect(act(name, more)).toEqual({ type: 'move', isBlock: false, to });
  });
  it('Shift spans a block from where it began', () => {
    expect(act('ArrowDown', { shiftKey: true })).toMatchObject({ isBlock: true, to: { row: 4 } });
    const place = { cursor: { row: 1, column: 5 }, anchor: { row: 3, column: 4 } };
    expect([isInBlock(place, 2, 4), isInBlock(place, 2, 6)]).toEqual([true, false]);
  });
  it('a number is typed, plus and minus step, and what is not the grid’s is left to others', () => {
    expect(act('7')).toEqual({ type: 'type', text: '7' });
    expect(act('-')).toEqual({ type: 'nudge', sign: -1, isRepeat: false });
    expect(act('+', { repeat: true })).toEqual({ type: 'nudge', sign: 1, isRepeat: true });
    expect(act('z', { ctrlKey: true })).toBeNull();
    expect(act('j')).toBeNull();
  });
});

describe('the bytes of a file', () => {
  it.each([
    ['UTF-8 with its mark', [0xef, 0xbb, 0xbf, 0x31, 0x0d, 0x0a, 0xc2, 0xb0]],
    ['a byte a letter', [0x31, 0xb0, 0x0a, 0x93]],
  ])('%s comes back as it was', async (_, bytes) => {
    const read = await readTableFile(new File([Uint8Array.from(bytes)], 'a.csv'));
    expect(read && [...bytesOf(read.text, read.encoding)]).toEqual(bytes);
  });
  it('what is no text is refused', async () => {
    expect(await readTableFile(new File([Uint8Array.of(1, 0, 2)], 'a.bin'))).toBeNull();
  });
});

describe('the colours of the heat map', () => {
  const css = readFileSync(new URL('../../../renderer/design/tokens.css', import.meta.url), 'utf8');
  const rgb = (theme: string, token: string): number[] => {
    const block = css.slice(css.indexOf(`[data-theme="${theme}"] {`));
    const hex = block.match(new RegExp(`--${token}: #([0-9a-f]{6})`))?.[1] ?? '';
    return [0, 2, 4].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255);
  };
  /** WCAG 2.2, definitions of "relative luminance" and "contrast ratio". */
  const luminance = (c: readonly number[]) => {
    const [r = 0, g = 0, b = 0] = c.map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const mixed = (theme: string, ink: string, share: number) => {
    const [a, b] = [rgb(theme, ink), rgb(theme, 'sheet')];
    return a.map((v, i) => v * share * mostInk + (b[i] ?? 0) * (1 - share * mostInk));
  };
  it.each(['day', 'night'])('by %s a number reads on every one of them (4.5 to 1)', (theme) => {
    for (const ink of ['before', 'after'])
      for (let share = 0; share <= 1; share += 0.05) {
        const [x, y] = [luminance(mixed(theme, ink, share)), luminance(rgb(theme, 'ink'))];
        const ratio = (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
        expect(ratio, `${ink} ${share}`).toBeGreaterThanOrEqual(4.5);
      }
  });
  it.each(['day', 'night'])('by %s grey tells high from low: lightness runs one way', (theme) => {
    const steps = [0, 0.25, 0.5, 0.75, 1].map((s) => luminance(mixed(theme, 'after', s)));
    const signs = steps.slice(1).map((v, i) => Math.sign(v - (steps[i] ?? 0)));
    expect(new Set(signs).size).toBe(1);
  });
  it('value and difference have their scales', () => {
    expect(heatOfValue(15, 10, 20)).toEqual({ ink: 'after', share: 0.5 });
    expect(heatOfValue(1, 1, 1).share).toBe(0);
    expect(heatOfDifference(-1, 2)).toEqual({ ink: 'before', share: 0.5 });
    expect(heatColour({ ink: 'after', share: 1 })).toBe('color-mix(in srgb, var(--after) 50%, var(--sheet))');
  });
});
