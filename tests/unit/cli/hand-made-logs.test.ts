import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { main } from '../../../electron/cli/main.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';
import { cellsAt, names, pull_s, rowCount, written } from './hand-made/invented-pull.ts';
import { refused } from './hand-made/refused.ts';
import { styles } from './hand-made/styles.ts';

const car = new URL('../../../sample-sessions/car.json', import.meta.url).pathname;
type Said = { readonly code: number; readonly out: string; readonly errors: string };
type Curve = { start_s: number; end_s: number; rpm: number[]; wheelPower_kW: (number | null)[] };

let place: ReturnType<typeof temporaryFolder>;
beforeAll(() => {
  place = temporaryFolder();
});
afterAll(() => place.remove());

async function call(...words: string[]): Promise<Said> {
  let out = '';
  let errors = '';
  const stdout = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    out += text;
    return true;
  });
  const stderr = vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    errors += text;
    return true;
  });
  try {
    return { code: await main(words), out, errors };
  } finally {
    stdout.mockRestore();
    stderr.mockRestore();
  }
}

function file(name: string, content: string | Uint8Array): string {
  const path = join(place.folder, name);
  writeFileSync(path, content);
  return path;
}

async function powerOf(path: string): Promise<Curve[]> {
  const { code, out } = await call('power', path, '--car', car, '--json');
  expect([code, code === 0 ? '' : out]).toEqual([0, '']);
  return (JSON.parse(out) as { pulls: Curve[] }).pulls;
}

const meanBetween = ({ rpm, wheelPower_kW }: Curve, low: number, high: number) => {
  const inside = wheelPower_kW.filter(
    (v, i): v is number => v !== null && (rpm[i] ?? 0) >= low && (rpm[i] ?? 0) <= high,
  );
  return inside.reduce((a, b) => a + b, 0) / inside.length;
};

describe('one drive gives one pull and one power, written with', () => {
  it.each(Object.keys(styles))('%s', async (style) => {
    const plain = (await powerOf(file('plain.csv', written())))[0] as Curve;
    const pulls = await powerOf(file('log.csv', styles[style]?.() ?? ''));
    expect(pulls).toHaveLength(1);
    const [pull] = pulls as [Curve];
    // From the start of the recording: a clock of the day counts from midnight.
    const shift = style === 'the time of day' ? 14 * 3600 + 3 * 60 : 0;
    expect(Math.abs(pull.start_s - shift - pull_s[0])).toBeLessThan(0.15);
    expect(Math.abs(pull.end_s - shift - pull_s[1])).toBeLessThan(0.15);
    const share = meanBetween(pull, 3500, 6000) / meanBetween(plain, 3500, 6000);
    expect(share).toBeGreaterThan(0.99);
    expect(share).toBeLessThan(1.01);
  });
});

describe('a file that is no log is refused with what, where and what to do:', () => {
  it.each(refused)('$what', async ({ name, content, code, says, line }) => {
    const path = file(name, content);
    for (const words of [
      ['pulls', path],
      ['power', path, '--car', car],
      ['judge', '--car', car, '--before', path, '--after', path, '--changed', 'boost'],
    ]) {
      const { code: exit, out } = await call(...words, '--json');
      const { error } = JSON.parse(out) as {
        error: { code: string; message: string; file: string; line?: number };
      };
      expect([words[0], exit, error.code, error.file, error.line]).toEqual([words[0], 2, code, path, line]);
      expect(error.message).toMatch(says);
    }
    // A person reads the same in words: the file first, what is wrong, what to do.
    const { code: exit, out, errors } = await call('pulls', path);
    expect([exit, out]).toEqual([2, '']);
    expect(errors).toContain(name);
    expect(errors).toMatch(says);
    expect(errors.trim().split('\n').length).toBeGreaterThanOrEqual(2);
  });
});

describe('the remedy of a refusal works:', () => {
  it('a log without a time column is read with its rate above the header', async () => {
    const rows = Array.from({ length: rowCount }, (_, i) => cellsAt(i).slice(1).join(','));
    const bare = `${names.slice(1).join(',')}\n${rows.join('\n')}\n`;
    expect((await call('pulls', file('bare.csv', bare))).code).toBe(2);
    expect(await powerOf(file('bare.csv', `Sample rate: 20 Hz\n${bare}`))).toHaveLength(1);
  });
});

describe('little, but a log:', () => {
  it.each([3, 20, 60])('%i rows give no pull and say so', async (count) => {
    const rows = Array.from({ length: count }, (_, i) => cellsAt(i).join(','));
    const { code, out } = await call('pulls', file('short.csv', `${names.join(',')}\n${rows.join('\n')}\n`));
    expect(code).toBe(0);
    expect(out).toContain('No full-throttle pull');
  });

  it('no pull to judge or to reckon with is told with the file', async () => {
    const rows = Array.from({ length: 60 }, (_, i) => cellsAt(i).join(','));
    const path = file('cruise.csv', `${names.join(',')}\n${rows.join('\n')}\n`);
    const power = await call('power', path, '--car', car);
    const judge = await call('judge', '--car', car, '--before', path, '--after', path, '--changed', 'boost');
    expect(power.out).toContain('No full-throttle pull');
    expect(judge.code).toBe(2);
    expect(judge.errors).toContain(
      'cruise.csv: No full-throttle pull that counts was found in the before logs.',
    );
  });
});

it('a name as long as a page leaves the others of the table in sight', async () => {
  const long = `Boost of the second channel, ${'recorded in the boot of the car, '.repeat(10)}(kPa)`;
  const head = names.map((n) => (n === 'Boost (kPa)' ? `"${long}"` : n)).join(',');
  const path = file('long.csv', written({ head: [head] }));
  const { out } = await call('pulls', path);
  const table = out.split('\n').filter((l) => l.includes('  '));
  expect(Math.max(...table.map((l) => l.length))).toBeLessThan(100);
  expect(out).toMatch(/Boost of the second channel, .*… +boost +kPa/);
  expect((await call('pulls', path, '--json')).out).toContain(long);
});
