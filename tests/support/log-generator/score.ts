/** How found pulls compare with true ones. */
export type Score = {
  readonly hits: number;
  readonly missed: number;
  readonly extra: number;
  readonly misses: readonly string[];
};

type Ends = { readonly start: number; readonly end: number };

/** A found pull is a hit when both of its ends lie within `tolerance` of a true one's. */
export function scorePulls(found: readonly Ends[], truth: readonly Ends[], tolerance = 0.15): Score {
  const left = new Set(found);
  const misses: string[] = [];
  let hits = 0;
  for (const t of truth) {
    let nearest: Ends | undefined;
    for (const f of left) {
      const off = Math.max(Math.abs(f.start - t.start), Math.abs(f.end - t.end));
      if (
        off <= tolerance &&
        (!nearest || off < Math.max(Math.abs(nearest.start - t.start), Math.abs(nearest.end - t.end)))
      )
        nearest = f;
    }
    if (nearest) {
      hits++;
      left.delete(nearest);
    } else misses.push(`missed ${t.start.toFixed(2)} to ${t.end.toFixed(2)}`);
  }
  for (const f of left) misses.push(`extra ${f.start.toFixed(2)} to ${f.end.toFixed(2)}`);
  return { hits, missed: truth.length - hits, extra: left.size, misses };
}
