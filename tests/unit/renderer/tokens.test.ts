import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('../../../renderer/design/tokens.css', import.meta.url), 'utf8');

function tokensOf(theme: string): Map<string, string> {
  const block = css.slice(css.indexOf(`[data-theme="${theme}"] {`));
  const body = block.slice(block.indexOf('{') + 1, block.indexOf('}'));
  return new Map([...body.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6})/g)].map((m) => [m[1] ?? '', m[2] ?? '']));
}

/** Relative luminance and contrast ratio: WCAG 2.2, definitions of "relative luminance" and "contrast ratio". */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

const textPairs = [
  ...['ink', 'soft', 'before', 'after', 'gain', 'loss', 'doubt'].flatMap((ink) =>
    ['paper', 'sheet', 'wash'].map((ground) => [ink, ground] as const),
  ),
  ['paper', 'ink'],
  ['ink', 'under'],
  ['ink', 'within'],
  ['ink', 'over'],
  ['soft', 'none'],
] as const;

/** Borders of fields and marks that carry meaning: WCAG 2.2, 1.4.11 asks for 3 to 1. */
const markPairs = [
  ['edge', 'paper'],
  ['edge', 'sheet'],
] as const;

describe.each(['day', 'night'])('the tokens of %s', (theme) => {
  const tokens = tokensOf(theme);
  const of = (name: string) => {
    const value = tokens.get(name);
    if (!value) throw new Error(`no token --${name}`);
    return value;
  };

  it.each(textPairs)('%s on %s reads as text (4.5 to 1)', (ink, ground) => {
    expect(contrast(of(ink), of(ground))).toBeGreaterThanOrEqual(4.5);
  });

  it.each(markPairs)('%s on %s shows a border (3 to 1)', (ink, ground) => {
    expect(contrast(of(ink), of(ground))).toBeGreaterThanOrEqual(3);
  });

  it('has the colours of the other set, no more and no less', () => {
    expect([...tokens.keys()].sort()).toEqual([...tokensOf('day').keys()].sort());
  });
});

it('black on white is 21 to 1, as the standard says', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
});
