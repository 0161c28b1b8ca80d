import type { Log } from '../../../core/log/index.ts';
import type { CoastDownWindow, LoggedRoll } from '../../../core/power/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import type { Arguments } from '../args.ts';

/** A log as it was named on the command line. */
export type NamedLog = { readonly path: string; readonly log: Log };

/** '12-75.5' in seconds of the file to rows of the log. */
function windowOf(from: number, to: number, time: Float64Array): CoastDownWindow | null {
  if (to <= from) return null;
  const first = time.findIndex((t) => t >= from);
  const end = time.findIndex((t) => t > to);
  return first < 0 ? null : { from: first, to: end < 0 ? time.length : end };
}

/** The rolls that one word means: a log, a number of the list, or a span of seconds; null where it means none. */
function rollsOfWord(
  word: string,
  logs: readonly NamedLog[],
  found: readonly LoggedRoll[],
): readonly LoggedRoll[] | null {
  const whole = logs.find(({ path }) => path === word);
  if (whole) return found.filter(({ log }) => log === whole.log);
  if (/^\d+$/.test(word)) {
    const roll = found[Number(word) - 1];
    return roll ? [roll] : null;
  }
  const [, at, from, to] = /^(?:(\d+):)?(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)$/.exec(word) ?? [];
  // Of several logs a span must say which.
  const log = at === undefined ? (logs.length === 1 ? logs[0]?.log : undefined) : logs[Number(at) - 1]?.log;
  if (!log || from === undefined || to === undefined) return null;
  const window = windowOf(Number(from), Number(to), log.time);
  return window && [{ ...window, log }];
}

/**
 * The rolls that --out and --back name, in their order; none where neither is given.
 *
 * Errors: terminal/not-a-choice for a word that means no roll, and for a roll that goes both ways.
 */
export function namedRolls(
  args: Arguments,
  logs: readonly NamedLog[],
  found: readonly LoggedRoll[],
): Result<readonly LoggedRoll[]> {
  const rolls: LoggedRoll[] = [];
  for (const [name, way] of [
    ['out', 1],
    ['back', -1],
  ] as const) {
    for (const word of args.values.get(name) ?? []) {
      const meant = rollsOfWord(word, logs, found);
      const isTwice = meant?.some((m) =>
        rolls.some((r) => r.log === m.log && r.from < m.to && m.from < r.to),
      );
      if (!meant || isTwice) {
        const spans = logs.length === 1 ? 'FROM-TO in seconds' : 'N:FROM-TO in seconds of the Nth log';
        const choices = isTwice
          ? 'each roll once, out or back'
          : `1 to ${found.length} as --list numbers the rolls, a log, or ${spans}`;
        return fail({ code: 'terminal/not-a-choice', facts: { option: `--${name}`, value: word, choices } });
      }
      rolls.push(...meant.map((roll) => ({ ...roll, way })));
    }
  }
  return ok(rolls);
}
