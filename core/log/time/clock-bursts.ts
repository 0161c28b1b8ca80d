/** A burst of wrong stamps is no longer than this; ten in a row are usual, ten times as many are not. */
const longestBurst = 100;
/** The clock may be off by so many usual steps where it comes back, and by this share of the rows between. */
const looseSteps = 2;
const looseShare = 0.25;

type Rows = { readonly from: number; readonly to: number };

/**
 * The rows of wrong stamps that a fall of the clock belongs to: stamps that go back and come forth again to where the
 * clock would have been, or that ran ahead and are back there now. Null for a clock that starts anew, which stays low.
 *
 * @param stamps  [s], NaN where none
 * @param at      row whose stamp lies before the one above it
 * @param step    usual step [s]
 */
export function burstAt(stamps: Float64Array, at: number, step: number): Rows | null {
  if (!(step > 0)) return null;
  return burstBehind(stamps, at, step) ?? burstAhead(stamps, at, step);
}

/** Whether a stamp is where the clock stands so many rows after another, and not where the fall alone would lead. */
function goesOn(from: number, to: number, rows: number, step: number, fall: number): boolean {
  const off = Math.abs(to - from - rows * step);
  return off <= (looseSteps + looseShare * rows) * step && off < fall / 2;
}

function burstBehind(stamps: Float64Array, at: number, step: number): Rows | null {
  const before = stamps[at - 1] ?? Number.NaN;
  let fall = 0;
  for (let i = at; i < stamps.length && i - at <= longestBurst; i++) {
    const now = stamps[i] ?? Number.NaN;
    if (i > at && now >= before && goesOn(before, now, i - at + 1, step, fall)) return { from: at, to: i };
    // By how much the stamps lie behind the clock, which a clock that only jitters never does.
    fall = Math.max(fall, before + (i - at + 1) * step - now || 0);
  }
  return null;
}

function burstAhead(stamps: Float64Array, at: number, step: number): Rows | null {
  const now = stamps[at] ?? Number.NaN;
  const fall = (stamps[at - 1] ?? Number.NaN) - now;
  for (let i = at - 1; i > 0 && at - i <= longestBurst; i--) {
    const before = stamps[i - 1] ?? Number.NaN;
    if (before <= now && goesOn(before, now, at - i + 1, step, fall)) return { from: i, to: at };
  }
  return null;
}
