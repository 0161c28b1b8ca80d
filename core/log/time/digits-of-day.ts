/** Longest step over a full minute by which digits of the day are told [s] (common practice: loggers write oftener). */
const longestStep_s = 5;

/**
 * Whether plain numbers are the time of day in digits, 140359.95 for 14:03:59.95: each is such a time, and where a
 * minute is full they jump by 40, an hour by 4,040 more than the clock runs on, and at midnight they fall to nought. Without a full minute among them they
 * rise as seconds do, and need no other reading.
 *
 * Source: the form hhmmss.ss is that of NMEA 0183, sentences GGA and RMC (from memory).
 */
export function areDigitsOfDay(stamps: Float64Array): boolean {
  let turns = 0;
  let last = Number.NaN;
  for (const digits of stamps) {
    if (Number.isNaN(digits)) continue;
    if (!(digits >= 0 && digits < 240_000 && digits % 100 < 60 && digits % 10_000 < 6000)) return false;
    const isMidnight = last - digits > 235_000;
    if (digits - last > 40 || isMidnight) {
      const step = secondsOfDigits(digits) - secondsOfDigits(last) + (isMidnight ? 86_400 : 0);
      if (!(step >= 0 && step <= longestStep_s)) return false;
      turns++;
    }
    last = digits;
  }
  return turns > 0;
}

/**
 * Seconds since midnight of the time of day in digits.
 *
 * Check: 140359.95 is 50639.95 s.
 */
export function secondsOfDigits(digits: number): number {
  const whole = Math.floor(digits);
  const s = Math.floor(whole / 10_000) * 3600 + (Math.floor(whole / 100) % 100) * 60 + (whole % 100);
  // To the microsecond, which is finer than the digits.
  return Math.round((s + digits - whole) * 1e6) / 1e6;
}
