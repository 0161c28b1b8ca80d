import { fail, ok, type Result } from '../../core/result/index.ts';

/** How often an option may carry a value. */
export type OptionKind = 'flag' | 'one' | 'many';

export type Arguments = {
  readonly positionals: readonly string[];
  readonly flags: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, readonly string[]>;
};

/**
 * Splits a command line. `many` takes every word up to the next option, so that
 * `--before a.csv b.csv --after c.csv` reads as it is said; `--name=value` works too, and `--` ends options.
 *
 * Errors: terminal/unknown-option, terminal/value-missing.
 */
export function readArguments(
  words: readonly string[],
  options: Readonly<Record<string, OptionKind>>,
): Result<Arguments> {
  const positionals: string[] = [];
  const flags = new Set<string>();
  const values = new Map<string, string[]>();
  let open: string | null = null;
  for (let i = 0; i < words.length; i++) {
    const word = words[i] as string;
    if (word === '--') {
      positionals.push(...words.slice(i + 1));
      break;
    }
    if (!word.startsWith('--')) {
      if (open) values.get(open)?.push(word);
      else positionals.push(word);
      continue;
    }
    open = null;
    const equals = word.indexOf('=');
    const name = equals < 0 ? word.slice(2) : word.slice(2, equals);
    const kind = options[name];
    if (!kind) return fail({ code: 'terminal/unknown-option', facts: { option: word } });
    if (kind === 'flag') {
      flags.add(name);
      continue;
    }
    const list = values.get(name) ?? [];
    values.set(name, list);
    if (equals >= 0) list.push(word.slice(equals + 1));
    else if (kind === 'one') {
      const next = words[i + 1];
      if (next === undefined || next.startsWith('--')) {
        return fail({ code: 'terminal/value-missing', facts: { option: word } });
      }
      list.push(next);
      i++;
    } else open = name;
  }
  for (const [name, list] of values) {
    if (list.length === 0) return fail({ code: 'terminal/value-missing', facts: { option: `--${name}` } });
  }
  return ok({ positionals, flags, values });
}

/** The single value of an option, or undefined. */
export function singleValue(args: Arguments, name: string): string | undefined {
  return args.values.get(name)?.at(-1);
}
