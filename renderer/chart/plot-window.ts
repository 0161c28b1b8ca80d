/** Part of an axis that is shown, in the axis' unit. */
export type PlotWindow = readonly [number, number];

/** No window is narrower than this share of the whole: beyond it there is nothing but single samples. */
const narrowest = 1 / 2000;

/** The window inside the whole, its width kept where it can be; the whole itself is null, which follows new pulls. */
function inside([low, high]: PlotWindow, [from, to]: PlotWindow): PlotWindow | null {
  const width = Math.max(high - low, (to - from) * narrowest);
  if (width >= (to - from) * 0.999) return null;
  const start = Math.min(Math.max(low, from), to - width);
  return [start, start + width];
}

/** A window `factor` times as wide, with `about` staying where it is on the screen. */
export function zoomed(
  seen: PlotWindow,
  whole: PlotWindow,
  factor: number,
  about: number,
): PlotWindow | null {
  const width = Math.max((seen[1] - seen[0]) * factor, (whole[1] - whole[0]) * narrowest);
  const share = Math.min(1, Math.max(0, (about - seen[0]) / (seen[1] - seen[0])));
  const low = seen[0] + share * (seen[1] - seen[0]) - share * width;
  return inside([low, low + width], whole);
}

/** A window moved on by a share of its own width; the ends of the whole hold it. */
export function panned(seen: PlotWindow, whole: PlotWindow, share: number): PlotWindow | null {
  const by = share * (seen[1] - seen[0]);
  return inside([seen[0] + by, seen[1] + by], whole);
}

/** What a key does to the window; undefined for a key that is not its own. */
export function windowByKey(
  key: { readonly key: string; readonly shiftKey: boolean },
  seen: PlotWindow,
  whole: PlotWindow,
  cursor: number | null,
): PlotWindow | null | undefined {
  const about = cursor !== null && cursor >= seen[0] && cursor <= seen[1] ? cursor : (seen[0] + seen[1]) / 2;
  switch (key.key) {
    case '+':
    case '=':
      return zoomed(seen, whole, 0.5, about);
    case '-':
      return zoomed(seen, whole, 2, about);
    case '0':
      return null;
    case 'ArrowLeft':
      return key.shiftKey ? panned(seen, whole, -0.1) : undefined;
    case 'ArrowRight':
      return key.shiftKey ? panned(seen, whole, 0.1) : undefined;
    default:
      return undefined;
  }
}
