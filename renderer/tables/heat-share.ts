/** How strongly a cell is coloured, 0 to 1, and with which ink. Lightness falls with the value, so grey tells it too. */
export type HeatInk = { readonly ink: 'after' | 'before'; readonly share: number };

/** One scale from the lowest to the highest cell. */
export function heatOfValue(value: number, lowest: number, highest: number): HeatInk {
  return { ink: 'after', share: highest > lowest ? (value - lowest) / (highest - lowest) : 0 };
}

/** Away from nothing both ways: blue falls, rust rises; the number carries its sign. */
export function heatOfDifference(delta: number, largest: number): HeatInk {
  return {
    ink: delta < 0 ? 'before' : 'after',
    share: largest > 0 ? Math.min(1, Math.abs(delta) / largest) : 0,
  };
}

/** Most ink in a cell, so that a number on it keeps 4.5 to 1. */
export const mostInk = 0.5;

export function heatColour({ ink, share }: HeatInk): string {
  const percent = Math.round(share * mostInk * 1000) / 10;
  return `color-mix(in srgb, var(--${ink}) ${percent}%, var(--sheet))`;
}
