import {
  calibrateRow,
  cleanSteps,
  confounders,
  days,
  type RowResult,
  refusedShare,
} from '../support/calibration.ts';

/**
 * How honest the verdict is, on invented sessions with known truth. Seeded; one command:
 *
 *   node tests/bench/calibrate-verdict.ts [sessions a row, default 400] [words in the row's name]
 *
 * Wanted: coverage 93 to 97 %, false verdicts at most 5 %, sign errors under 0.5 %, in sessions of four entries
 * or more an interval at most 0.85 of Welch's at the same coverage, confounded steps refused in 95 % or more,
 * clean ones in 3 % or less.
 */
const sessions = Number(process.argv[2] ?? 400);
const only = process.argv[3] ?? '';

const percent = (share: number, digits = 1) => `${(100 * share).toFixed(digits)}`;
const columns = [
  ['day', 16],
  ['entries', 8],
  ['pulls', 6],
  ['coverage', 9],
  ['Welch', 7],
  ['false', 7],
  ['sign', 6],
  ['decided', 8],
  ['refused', 8],
  ['curve', 7],
  ['half', 6],
  ['Welch', 6],
  ['ratio', 6],
] as const;
const line = (cells: readonly (string | number)[]) =>
  console.log(
    cells.map((c, i) => String(c)[i === 0 ? 'padEnd' : 'padStart'](columns[i]?.[1] ?? 8)).join(' '),
  );
const show = (r: RowResult) =>
  line([
    r.name,
    r.entries,
    r.pulls,
    percent(r.coverage),
    percent(r.welchCoverage),
    percent(r.falseVerdicts),
    percent(r.signErrors),
    percent(r.decided),
    percent(r.refused),
    percent(r.curveCoverage),
    percent(r.half, 2),
    percent(r.welchHalf, 2),
    r.widthRatio.toFixed(2),
  ]);

console.log(`${sessions} sessions a row; shares in percent, half widths in percent of power`);
line(columns.map(([name]) => name));
const all: RowResult[] = [];
Object.entries(days)
  .filter(([name]) => name.includes(only))
  .forEach(([name, day], d) => {
    for (const entries of [2, 5]) {
      for (const pulls of [2, 3, 4, 5]) {
        const result = calibrateRow(
          { name, entries, pulls, day },
          sessions,
          1000 * d + 100 * entries + pulls,
        );
        all.push(result);
        show(result);
      }
    }
  });

const mean = (rows: readonly RowResult[], of: (r: RowResult) => number) =>
  rows.reduce((sum, r) => sum + of(r), 0) / rows.length;
for (const entries of [2, 5]) {
  const rows = all.filter((r) => r.entries === entries);
  show({
    name: 'all',
    entries,
    pulls: Number.NaN,
    sessions,
    coverage: mean(rows, (r) => r.coverage),
    welchCoverage: mean(rows, (r) => r.welchCoverage),
    falseVerdicts: mean(rows, (r) => r.falseVerdicts),
    signErrors: mean(rows, (r) => r.signErrors),
    decided: mean(rows, (r) => r.decided),
    refused: mean(rows, (r) => r.refused),
    curveCoverage: mean(rows, (r) => r.curveCoverage),
    half: mean(rows, (r) => r.half),
    welchHalf: mean(rows, (r) => r.welchHalf),
    widthRatio: mean(rows, (r) => r.widthRatio),
  });
}

console.log('\nrefused as not comparable, percent, by pulls a side');
const mixed = days['mixed days'] ?? (() => ({}));
for (const [title, steps] of [
  ['confounded', confounders],
  ['clean', cleanSteps],
] as const) {
  for (const step of steps) {
    const shares = [2, 3, 5].map((pulls) =>
      percent(refusedShare(step, { entries: 2, pulls, day: mixed }, sessions, 77 + pulls)),
    );
    console.log(`${title.padEnd(11)} ${step.name.padEnd(28)} ${shares.map((s) => s.padStart(6)).join(' ')}`);
  }
}
