import type { QuantityId } from './quantity.ts';

/** What is worth saying of a log, a column or a pull. Facts are SI. */
declare module '../result/result.ts' {
  interface NoteFacts {
    'log/column-by-formula': { formula: string };
    /** The column's words were found in the dictionary. */
    'log/column-by-name': { word: string };
    /** Name in the dictionary, unit stated in the file. */
    'log/column-by-name-unit': { word: string; unit: string };
    /** Name in the dictionary, unit from the size of the values (in the unit itself). */
    'log/column-by-values': { word: string; unit: string; low: number; high: number };
    /** Gauge or absolute was told by the values. */
    'log/column-gauge-by-values': { word: string; low: number; high: number };
    /** Time told by a column that runs on steadily. */
    'log/column-steady-clock': { step_s: number };
    'log/column-by-hand': Record<string, never>;
    /** As corrected by hand in an earlier log with the same columns. */
    'log/column-by-profile': Record<string, never>;
    'log/column-unknown': Record<string, never>;
    /** It has one value throughout while the engine turns up and down. */
    'log/column-stands-still': Record<string, never>;

    /** The log was no plain table but one in another form. */
    /** Groups of columns that each had a time of their own, and the time that serves all since. */
    'log/times-joined': { column: string; count: number };
    'log/rewritten': { form: 'web-page' | 'json' | 'on-its-side' | 'value-per-row' };
    /** One byte a character, and the words of the header are known in this encoding. */
    'log/encoding-by-words': { encoding: string };
    /** The header has no name for the last columns. */
    'log/columns-unnamed': { count: number; columns: number; line: number };
    /** Nothing in the file says which unit a speed has. */
    'log/speed-unit-assumed': { column: string; unit: string };
    /** The car's gears fit one unit alone. */
    'log/speed-unit-by-gears': { column: string; unit: string };
    /** In another unit the engine would turn faster over the road than any gear lets it. */
    'log/speed-unit-by-engine': { column: string; unit: string };
    /** A pedal or throttle that falls as it opens was turned round. */
    'log/opening-turned': { column: string };
    'log/rows-skipped': { count: number; firstLine: number };
    /** More numbers than columns: nobody can tell which belongs to which. */
    'log/rows-wide': { count: number; firstLine: number; columns: number; isCommaParted: boolean };
    /** Zero bytes in the middle, as a power cut leaves them. */
    'log/zero-rows': { count: number; firstLine: number };
    'log/header-repeated': { count: number; firstLine: number };
    /** A table with other columns follows in the same file and was not read. */
    'log/other-table': { line: number };
    'log/last-row-cut': { line: number };
    /** Rows without a stamp at the end, of lowest and highest values say. */
    'log/foot-left-out': { count: number };
    /** The rows stood in reverse. */
    'log/newest-first': Record<string, never>;
    'log/padded-tail': { bytes: number };
    'log/time-repaired': { count: number; first_s: number };
    /** So far apart that no pull is told well, or the unit of time is another. */
    'log/rows-far-apart': { step_s: number };
    /** Many rows shared one time stamp and were spread evenly. */
    'log/stamps-spread': { count: number };
    'log/clock-reset': { count: number; at_s: number; to_s: number };
    'log/gap': { count: number; longest_s: number; at_s: number };
    /** Time counted from the row number at a stated rate. */
    'log/time-from-rate': { rate_Hz: number };
    'log/mapping-unused': { column: string };
    /** So many columns are read as they were corrected in an earlier log. */
    'log/profile-used': { count: number };

    /** Which signal told full throttle. */
    'log/pulls-by': { quantity: QuantityId };
    'log/no-pulls': Record<string, never>;
    /** Neither engine speed nor a road speed that moves. */
    'log/no-engine-speed': Record<string, never>;
    /** A road speed, and neither engine speed nor anything that tells full throttle. */
    'log/speed-alone': { column: string };
    /** Engine speed is not logged; it follows from this column and the gear. */
    'log/engine-speed-computed': { column: string; gearFrom: 'log' | 'told' };
    /** Engine speed is not logged, and this is missing to compute it from the column. */
    'log/engine-speed-open': { column: string; missing: 'gearRatios' | 'finalDrive' | 'radius' | 'gear' };
    /** Road speed alone is logged, and no gear of the car fits beside the other pulls. */
    'log/pull-gear-unsettled': Record<string, never>;
    /** Null where engine speed is neither logged nor computed. */
    'log/pull-aborted': { rpmTo_rad_s: number | null };
    'log/pull-gear-change': { time_s: number };
    /** `excess` is null where no road speed tells it. */
    'log/pull-wheel-spin': { time_s: number; excess: number | null };
    'log/pull-limiter': { engineSpeed_rad_s: number };
    'log/pull-intervention': { time_s: number };
    'log/pull-knock': { time_s: number; retard_rad: number };
    /** The longest gap within it, in which speed shows that the car pulled on. */
    'log/pull-gap': { time_s: number; missing_s: number };
    'log/pull-no-start': Record<string, never>;
    'log/pull-no-end': Record<string, never>;
    /** Half of the interval in which the end lies nine times of ten, where no pedal tells it. */
    'log/pull-start-uncertain': { within_s: number };
    'log/pull-end-uncertain': { within_s: number };
  }
}
