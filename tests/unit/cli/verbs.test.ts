import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { CarFileSchema } from '../../../core/power/index.ts';
import { main } from '../../../electron/cli/main.ts';
import { rolledLog } from '../../support/rolled-log.ts';
import { sampleCopy, temporaryFolder } from '../../support/sample-copy.ts';

const samples = new URL('../../../sample-sessions/', import.meta.url).pathname;
const car = join(samples, 'car.json');
const log = (name: string) => join(samples, 'logs', name);

type Curves = {
  rpm: number[];
  wheelPower_kW: number[];
  wheelPowerHalf95_kW: number[];
  enginePower_kW: number[];
};
type WitnessAnswer = { quantity: string; unit: string; delta: number; declared: boolean };

let place: ReturnType<typeof temporaryFolder>;

beforeEach(() => {
  place = temporaryFolder();
});
afterEach(() => place.remove());

/** One command line with --json: its exit code and the one JSON value on stdout. */
async function call(...words: string[]): Promise<{ code: number; json: Record<string, unknown> }> {
  let out = '';
  const stdout = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    out += text;
    return true;
  });
  try {
    const code = await main([...words, '--json']);
    return { code, json: JSON.parse(out) };
  } finally {
    stdout.mockRestore();
  }
}

/** A key of the answer as the type that the README promises. */
function at<T>(json: Record<string, unknown>, key: string): T {
  expect(json).toHaveProperty(key);
  return json[key] as T;
}

function file(name: string, content: string | Uint8Array): string {
  const path = join(place.folder, name);
  writeFileSync(path, content);
  return path;
}

describe('onechange coast-down', () => {
  const rolledBothWays = () => file('rolls.csv', rolledLog());

  it('finds the rolls and gives the road load for the car file, slope taken off', async () => {
    const heavy = file('heavy.json', JSON.stringify({ mass_kg: 1450, wheelInertia_kg_m2: 0 }));
    const { code, json } = await call('coast-down', rolledBothWays(), '--car', heavy, '--turns');
    expect(code).toBe(0);
    expect(at<{ way: string }[]>(json, 'rolls').map((r) => r.way)).toEqual(['out', 'back']);
    const load = at<Record<string, number>>(json, 'roadLoad');
    expect(Object.keys(load)).toEqual(['a_N', 'b_N_s_m', 'c_N_s2_m2', 'half_percent']);
    expect(load.a_N).toBeCloseTo(170, -1);
    expect(load.c_N_s2_m2).toBeCloseTo(0.4, 1);
    const car = { mass_kg: 1450, roadLoad: load };
    expect(CarFileSchema.safeParse(car).success).toBe(true);
  });

  it('says that nothing shows the neutral where no engine speed is logged, and that the wheels do not count', async () => {
    const without = file('no-engine-speed.csv', rolledLog({ rolls: 1, hasEngineSpeed: false }));
    const { json } = await call('coast-down', without, '--car', file('light.json', '{"mass_kg":1450}'));
    expect(at<{ code: string }[]>(json, 'warnings').map((w) => w.code)).toEqual([
      'power/coast-down-one-way',
      'power/coast-down-neutral-untold',
      'power/coast-down-beyond',
      'power/wheel-inertia-not-counted',
    ]);
  });

  describe('with one roll in each of several logs', () => {
    const light = () => file('light.json', '{"mass_kg":1450,"wheelInertia_kg_m2":0}');
    const out = (hasPosition = false) => file('out.csv', rolledLog({ ways: [1], hasPosition }));
    const back = (hasPosition = false) => file('back.csv', rolledLog({ ways: [-1], hasPosition }));
    const ways = (json: Record<string, unknown>) =>
      at<{ file: string; way: string }[]>(json, 'rolls').map((r) => r.way);

    it.each<[string, () => string[]]>([
      ['numbers of the list', () => ['--out', '1', '--back', '2']],
      ['the logs', () => ['--out', join(place.folder, 'out.csv'), '--back', join(place.folder, 'back.csv')]],
      ['seconds of a log', () => ['--out', '1:17-130', '--back', '2:17-170']],
      ['turns', () => ['--turns']],
    ])('one fit takes all, ways named by %s', async (_, named) => {
      const { json } = await call('coast-down', out(), back(), '--car', light(), ...named());
      expect(ways(json)).toEqual(['out', 'back']);
      const load = at<Record<string, number>>(json, 'roadLoad');
      expect(load.a_N).toBeCloseTo(170, -1);
      expect(at<{ extrapolated: boolean }[]>(json, 'force').map((f) => f.extrapolated)).toEqual([
        false,
        false,
        true,
      ]);
    });

    it('positions tell the ways where they are logged', async () => {
      const { json } = await call('coast-down', out(true), back(true), '--car', light());
      expect(ways(json)).toEqual(['out', 'back']);
    });

    it('rolls are listed with their log and nothing is fitted', async () => {
      const { code, json } = await call('coast-down', out(), back(), '--car', light(), '--list');
      expect(code).toBe(0);
      expect(Object.keys(json)).toEqual(['files', 'rolls']);
      expect(at<{ file: string }[]>(json, 'rolls').map((r) => r.file)).toEqual(json.files);
    });

    it.each([
      ['20-60', 'which log it is of'],
      ['3', 'no such roll'],
      ['3:20-60', 'no such log'],
    ])('%s is refused: %s', async (word) => {
      const { code, json } = await call('coast-down', out(), back(), '--car', light(), '--out', word);
      expect(code).toBe(2);
      expect(json).toMatchObject({ error: { code: 'terminal/not-a-choice' } });
    });

    it('a roll that is said to go both ways is refused', async () => {
      const { json } = await call('coast-down', out(), back(), '--car', light(), '--out', '1', '--back', '1');
      expect(json).toMatchObject({ error: { code: 'terminal/not-a-choice' } });
    });
  });

  it('refuses a log without rolls and a span that is none', async () => {
    const none = await call('coast-down', log('0-baseline-a.csv'), '--car', car);
    expect(none.code).toBe(2);
    expect(none.json).toMatchObject({ error: { code: 'power/coast-down-none' } });
    const span = await call('coast-down', rolledBothWays(), '--car', car, '--out', '40-x');
    expect(span.json).toMatchObject({ error: { code: 'terminal/not-a-choice' } });
  });
});

describe('onechange pulls', () => {
  it('names pulls by the clock of the file, also behind a clock that starts anew', async () => {
    const rows = Array.from({ length: 400 }, (_, i) => {
      const isPull = i >= 100 && i < 300;
      return [(i / 20).toFixed(2), isPull ? 2500 + 20 * (i - 100) : 2500, isPull ? 100 : 15].join(',');
    });
    const twice = file('twice.csv', ['Time (s),RPM,Pedal (%)', ...rows, ...rows].join('\n'));
    const { json } = await call('pulls', twice);
    const starts = at<{ start_s: number; end_s: number }[]>(json, 'pulls').map((p) => [p.start_s, p.end_s]);
    expect(starts).toEqual([
      [5, 14.95],
      [5, 14.95],
    ]);
  });

  it('answers in the fixed shape', async () => {
    const { code, json } = await call('pulls', log('0-baseline-a.csv'), '--car', car);
    expect(code).toBe(0);
    expect(Object.keys(json)).toEqual(['file', 'channels', 'pulls', 'warnings']);
    expect(json.channels).toContainEqual({
      column: 'Engine speed (rpm)',
      quantity: 'engineSpeed',
      unit: 'rpm',
    });
    expect(Object.keys(at<object[]>(json, 'pulls')[0] ?? {})).toEqual([
      'start_s',
      'end_s',
      'gear',
      'rpmFrom',
      'rpmTo',
      'complete',
      'flags',
    ]);
    expect(at<object[]>(json, 'pulls')[0]).toMatchObject({ gear: 3, complete: true });
  });

  it('finds pulls without a car', async () => {
    const { json } = await call('pulls', log('0-baseline-a.csv'));
    expect(json.pulls).not.toHaveLength(0);
  });
});

describe('onechange power', () => {
  it('gives curves of one length, engine above wheel', async () => {
    const { code, json } = await call('power', log('0-baseline-a.csv'), '--car', car);
    const pull = at<Curves[]>(json, 'pulls')[0] as Curves;
    expect(code).toBe(0);
    expect(pull.wheelPower_kW).toHaveLength(pull.rpm.length);
    for (const [i, wheel] of pull.wheelPower_kW.entries()) {
      expect(pull.enginePower_kW[i]).toBeGreaterThan(wheel);
      // A mass told to 15 kg in 1,420 leaves 1 % of doubt, whatever else is known.
      expect(pull.wheelPowerHalf95_kW[i]).toBeGreaterThan(0.01 * wheel);
      expect(pull.wheelPowerHalf95_kW[i]).toBeLessThan(0.2 * wheel);
    }
    expect(json.correction).toMatchObject({ standard: 'none' });
  });
});

describe('onechange judge', () => {
  it('answers in the fixed shape, effect after minus before in kW at the wheels', async () => {
    const { code, json } = await call(
      'judge',
      '--car',
      car,
      '--before',
      log('1-spray-a.csv'),
      log('1-spray-b.csv'),
      '--after',
      log('2-boost-a.csv'),
      log('2-boost-b.csv'),
      log('2-boost-c.csv'),
      '--changed',
      'boost',
    );
    expect(code).toBe(0);
    expect(Object.keys(json)).toEqual([
      'verdict',
      'effect_kW',
      'ci95_kW',
      'effect_percent',
      'band_rpm',
      'pullsBefore',
      'pullsAfter',
      'morePulls',
      'reasons',
      'remarks',
      'witnesses',
      'curve',
    ]);
    expect(json.verdict).toBe('gain');
    // What was left out or corrected is no reason against the verdict.
    expect(json.reasons).toEqual([]);
    expect(at<{ code: string }[]>(json, 'remarks').map((n) => n.code)).toContain('compare/from-spooled');
    const [low, high] = at<[number, number]>(json, 'ci95_kW');
    expect(low).toBeLessThan(at<number>(json, 'effect_kW'));
    expect(high).toBeGreaterThan(at<number>(json, 'effect_kW'));
    const curve = at<Record<string, number[]>>(json, 'curve');
    expect(Object.keys(curve)).toEqual(['rpm', 'before_kW', 'after_kW', 'delta_kW', 'lo_kW', 'hi_kW']);
    const boost = at<WitnessAnswer[]>(json, 'witnesses').find((w) => w.quantity === 'boost');
    expect(boost).toMatchObject({ unit: 'bar', declared: true });
    expect(boost?.delta).toBeGreaterThan(0.07);
    expect(boost?.delta).toBeLessThan(0.13);
  });

  it('one pull a side without other entries is undecided, always', async () => {
    const words = ['--before', log('2-boost-a.csv'), '--after', log('2-boost-b.csv')];
    const { json } = await call('judge', '--car', car, ...words);
    expect(json.pullsBefore).toBe(1);
    expect(json.verdict).toBe('undecided');
    expect(json.ci95_kW).toBeNull();
  });

  it('one pull a side may lean on an earlier session of the car, and says so', async () => {
    const words = ['--before', log('1-spray-a.csv'), '--after', log('2-boost-b.csv'), '--earlier'];
    const { json } = await call('judge', '--car', car, ...words, sampleCopy(place.folder));
    expect(json.ci95_kW).not.toBeNull();
    expect(at<{ code: string }[]>(json, 'remarks').map((n) => n.code)).toContain('compare/prior-used');
  });

  it.each([
    [['--before', 'a.csv', '--after', 'b.csv'], 'terminal/argument-missing'],
    [['--car', 'c.json', '--after', 'b.csv'], 'terminal/argument-missing'],
    [
      ['--car', 'c.json', '--before', 'a.csv', '--after', 'b.csv', '--changed', 'wheels'],
      'terminal/not-a-choice',
    ],
    [['--car', 'c.json', '--before', 'a.csv', '--after', 'b.csv', '--margin', '-1'], 'terminal/not-a-choice'],
    [['--car', '/nowhere.json', '--before', 'a.csv', '--after', 'b.csv'], 'terminal/file-unreadable'],
  ])('%j is refused with %s', async (words, code) => {
    const answer = await call('judge', ...words);
    expect(answer.code).toBe(2);
    expect(answer.json).toMatchObject({ error: { code } });
  });
});

describe('bad input', () => {
  const header = 'time,rpm,throttle\n';
  const cases: [string, () => string | Uint8Array][] = [
    ['nothing at all', () => ''],
    ['only blanks', () => ' \n\n\t\n'],
    [
      'a picture',
      () =>
        Uint8Array.from(
          { length: 4000 },
          (_, i) => (i < 8 ? [137, 80, 78, 71, 13, 10, 26, 10][i] : (i * 7919) % 256) as number,
        ),
    ],
    ['a web page', () => '<!DOCTYPE html><html><body><table><tr><td>1</td></tr></table></body></html>'],
    ['no time column', () => `rpm,throttle\n${'2000,5\n'.repeat(50)}`],
    ['one row', () => `${header}0,2000,5\n`],
    ['a header alone', () => header],
    [
      '5,000 columns of nothing known',
      () =>
        `${Array.from({ length: 5000 }, (_, i) => `c${i}`).join(',')}\n${Array(5000).fill('1').join(',')}\n`,
    ],
    ['null bytes', () => new Uint8Array(5000)],
    ['one line of 10 MB', () => 'x'.repeat(10_000_000)],
    ['a text', () => 'Dear diary, today the car was fast.\nTomorrow it will be faster.\n'],
  ];

  it.each(cases)('%s gives one clear message, names the file and crashes nothing', async (_name, content) => {
    const path = file('input.csv', content());
    const { code, json } = await call('pulls', path);
    expect(code).toBe(2);
    const error = at<{ code: string; message: string; file: string }>(json, 'error');
    expect(error.file).toBe(path);
    expect(error.message.length).toBeGreaterThan(20);
    expect(error.code).toMatch(/^log\//);
    expect(json).not.toHaveProperty('more');
  });

  it('a car file names the field that is wrong', async () => {
    const path = file('car.json', '{"mass_kg": -4}');
    const { code, json } = await call('power', log('0-baseline-a.csv'), '--car', path);
    expect(code).toBe(2);
    expect(at<{ message: string }>(json, 'error').message).toContain('mass_kg');
  });

  it('a car file that is no JSON is told so', async () => {
    const path = file('car.json', 'mass: 1400');
    expect((await call('power', log('0-baseline-a.csv'), '--car', path)).json).toMatchObject({
      error: { code: 'terminal/not-json', file: path },
    });
  });

  it('an unknown verb lists the known ones', async () => {
    const { code, json } = await call('fly');
    expect(code).toBe(2);
    expect(at<{ message: string }>(json, 'error').message).toContain('judge');
  });
});

describe('a session from the terminal', () => {
  it('is made, fed, checked, judged and handed over', async () => {
    const folder = join(place.folder, 'My car');
    expect((await call('new', folder, '--car', car)).json).toMatchObject({ folder });
    const imported = await call('import', folder, log('0-baseline-a.csv'), log('0-baseline-b.csv'));
    expect(imported.json.imported).toHaveLength(2);
    const again = await call('import', folder, log('0-baseline-a.csv'));
    expect(at<{ duplicateOf: string | null }[]>(again.json, 'imported')[0]?.duplicateOf).not.toBeNull();
    expect((await call('check', folder)).json).toMatchObject({ sound: true, runs: 2 });
    const ledger = await call('ledger', folder);
    expect(at<{ pulls: number }[]>(ledger.json, 'entries')[0]?.pulls).toBeGreaterThan(0);
    const out = join(place.folder, 'summary.html');
    expect((await call('summary', folder, '--out', out, '--date', '2027-03-14')).code).toBe(0);
    expect(readFileSync(out, 'utf8')).toContain('My car');
  });

  it('takes the logs beside a file that is none, and says which one was left where it is', async () => {
    const folder = join(place.folder, 'My car');
    await call('new', folder, '--car', car);
    const picture = join(place.folder, 'picture.csv');
    writeFileSync(picture, Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0));
    const mixed = await call('import', folder, log('0-baseline-a.csv'), picture, log('0-baseline-b.csv'));
    expect(mixed.code).toBe(2);
    expect(mixed.json.imported).toHaveLength(2);
    expect(mixed.json.error).toMatchObject({ code: 'log/not-a-table', file: 'picture.csv' });
    expect((await call('check', folder)).json).toMatchObject({ sound: true, runs: 2 });
    const alone = await call('import', folder, picture);
    expect([alone.code, alone.json]).toEqual([2, { error: mixed.json.error }]);
    expect(existsSync(picture)).toBe(true);
  });

  it('refuses a summary of another form and writes nothing', async () => {
    const out = join(place.folder, 'summary.docx');
    expect((await call('summary', join(samples, 'fenmoor-hatch'), '--out', out)).code).toBe(2);
    expect(existsSync(out)).toBe(false);
  });

  it('a folder that is no session is told so', async () => {
    expect((await call('ledger', place.folder)).json).toMatchObject({
      error: { code: 'store/not-a-session' },
    });
  });
});
