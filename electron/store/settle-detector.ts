/** A file as a listing sees it. */
export type SeenFile = { readonly name: string; readonly size: number; readonly modified_ms: number };

/** A file that stopped growing. `isNew` is false for one that was told before and has changed since. */
export type SettledFile = SeenFile & { readonly isNew: boolean };

/** Loggers flush at least once a second; two quiet ones in a row are an end (common practice). */
export const usualSettle_ms = 2_500;

type Known = { size: number; modified_ms: number; since_ms: number; isTold: boolean; wasTold: boolean };

/**
 * Tells from repeated listings which files are complete: size and date unchanged for `settle_ms`. What stands at
 * the first listing is known already and is told only if it changes later. An empty file is not told: a logger
 * makes it before the first row.
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
    for (const { name, size, modified_ms } of files) {
      const before = known?.get(name);
      const isSame = before?.size === size && before.modified_ms === modified_ms;
      const now: Known =
        before && isSame
          ? before
          : {
              size,
              modified_ms,
              since_ms: clock_ms,
              isTold: isFirst,
              wasTold: isFirst || (before?.isTold ?? false) || (before?.wasTold ?? false),
            };
      next.set(name, now);
      if (!isFirst && !isSame && size > 0) onGrowing({ name, size, modified_ms, isNew: !now.wasTold });
      if (now.isTold || size === 0 || clock_ms - now.since_ms < settle_ms) continue;
      now.isTold = true;
      settled.push({ name, size, modified_ms, isNew: !now.wasTold });
    }
    known = next;
    return settled;
  };
}
