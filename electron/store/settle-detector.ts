/** A file as a listing sees it. */
export type SeenFile = {
  readonly name: string;
  readonly size: number;
  readonly modified_ms: number;
  /** Its last byte ends a line; left out where nobody looked. */
  readonly endsLine?: boolean;
};

/** A file that stopped growing. `isNew` is false for one that was told before and has changed since. */
export type SettledFile = Pick<SeenFile, 'name' | 'size' | 'modified_ms'> & { readonly isNew: boolean };

/** Loggers flush at least once a second; two quiet ones in a row are an end (common practice). */
export const usualSettle_ms = 2_500;
/** Share of the settling time for a file that ends in a whole line: 1 s of 2.5. */
const wholeLineShare = 0.4;
/** A writer that was never quiet for longer than this before has ended once it is quiet that many times as long. */
const timesItsPause = 2.5;
/** Header and a first row or two: a logger may be about to begin, and no pull fits in (common practice). */
const mereHead_bytes = 4_096;

type Known = {
  size: number;
  modified_ms: number;
  since_ms: number;
  /** Longest time between two changes that were seen. */
  pause_ms: number;
  isTold: boolean;
  wasTold: boolean;
};

/**
 * Tells from repeated listings which files are complete: size and date unchanged for `settle_ms`, or for less
 * where the file ends in a whole line and its writer never paused that long. What is told too early is told again
 * once it has grown. What stands at the first listing is known already and is told only if it changes later. An
 * empty file is not told: a logger makes it before the first row.
 *
 * @param onGrowing  told at each listing in which a log is found new or changed
 * @returns  a function from a listing and a clock that never goes backwards [ms] to the files that settled
 */
export function createSettleDetector(
  settle_ms: number = usualSettle_ms,
  onGrowing: (log: SettledFile) => void = () => undefined,
): (files: readonly SeenFile[], clock_ms: number) => SettledFile[] {
  let known: Map<string, Known> | null = null;
  return (files, clock_ms) => {
    const isFirst = known === null;
    const next = new Map<string, Known>();
    const settled: SettledFile[] = [];
    for (const { name, size, modified_ms, endsLine = false } of files) {
      const before = known?.get(name);
      const isSame = before?.size === size && before.modified_ms === modified_ms;
      const now: Known =
        before && isSame
          ? before
          : {
              size,
              modified_ms,
              since_ms: clock_ms,
              // A file that was told had ended: how long it rested since says nothing of its writer.
              pause_ms: before && !before.isTold ? Math.max(before.pause_ms, clock_ms - before.since_ms) : 0,
              isTold: isFirst,
              wasTold: isFirst || (before?.isTold ?? false) || (before?.wasTold ?? false),
            };
      next.set(name, now);
      if (!isFirst && !isSame && size > 0) onGrowing({ name, size, modified_ms, isNew: !now.wasTold });
      const isLikelyWhole = endsLine && size >= mereHead_bytes;
      const needed_ms = isLikelyWhole
        ? Math.min(settle_ms, Math.max(wholeLineShare * settle_ms, timesItsPause * now.pause_ms))
        : settle_ms;
      if (now.isTold || size === 0 || clock_ms - now.since_ms < needed_ms) continue;
      now.isTold = true;
      settled.push({ name, size, modified_ms, isNew: !now.wasTold });
    }
    known = next;
    return settled;
  };
}
