import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import { readArguments, singleValue } from '../../../electron/cli/args.ts';

const options = { car: 'one', before: 'many', after: 'many', force: 'flag' } as const;

describe('a command line', () => {
  it('reads lists up to the next option, as it is said', () => {
    const args = unwrap(
      readArguments(['--before', 'a.csv', 'b.csv', '--after', 'c.csv', '--car', 'car.json'], options),
    );
    expect(args.values.get('before')).toEqual(['a.csv', 'b.csv']);
    expect(args.values.get('after')).toEqual(['c.csv']);
    expect(singleValue(args, 'car')).toBe('car.json');
    expect(args.positionals).toEqual([]);
  });

  it('keeps words before the first option, after a single value and behind -- as positionals', () => {
    const args = unwrap(
      readArguments(['x.csv', '--car', 'c.json', 'y.csv', '--', '--odd-name.csv'], options),
    );
    expect(args.positionals).toEqual(['x.csv', 'y.csv', '--odd-name.csv']);
  });

  it('takes --name=value, also with an equals sign in the value', () => {
    const args = unwrap(readArguments(['--car=a=b.json', '--force'], options));
    expect(singleValue(args, 'car')).toBe('a=b.json');
    expect(args.flags.has('force')).toBe(true);
  });

  it('names an option that it does not know', () => {
    const result = readArguments(['--colour', 'red'], options);
    expect(result).toMatchObject({
      problems: [{ code: 'terminal/unknown-option', facts: { option: '--colour' } }],
    });
  });

  it('names an option whose value is missing, at the end and before another', () => {
    for (const words of [['--car'], ['--before', '--car', 'c.json']]) {
      expect(readArguments(words, options)).toMatchObject({ problems: [{ code: 'terminal/value-missing' }] });
    }
  });
});
