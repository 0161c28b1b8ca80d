import { expect, it, vi } from 'vitest';
import { LadderJsonSchema, MixtureJsonSchema } from '../../../core/ladder/index.ts';
import { main } from '../../../electron/cli/main.ts';

const setup = new URL('../../../sample-sessions/setup.json', import.meta.url).pathname;

async function call(...words: string[]): Promise<{ code: number; json: unknown }> {
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

it('ladder answers the sample setup in the promised shape, street or dyno', async () => {
  const street = await call('ladder', setup);
  expect(street.code).toBe(0);
  const ladder = LadderJsonSchema.parse(street.json);
  expect(ladder.steps.map((s) => s.kind)).toEqual(expect.arrayContaining(['spray', 'boost', 'spark']));
  const dyno = LadderJsonSchema.parse((await call('ladder', setup, '--place', 'dyno')).json);
  expect([ladder.routine.place, dyno.routine.place]).toEqual(['street', 'dyno']);
});

it('ladder refuses a place that it does not know, and a file that is not there', async () => {
  expect(await call('ladder', setup, '--place', 'moon')).toMatchObject({
    code: 2,
    json: { error: { code: 'terminal/not-a-choice' } },
  });
  expect((await call('ladder', 'no-such-file.json')).code).toBe(2);
});

it('mixture answers the sample setup in the promised shape', async () => {
  const { code, json } = await call('mixture', setup);
  expect(code).toBe(0);
  const { rows } = MixtureJsonSchema.parse(json);
  expect(rows[rows.length - 1]?.expectedTrim_percent).toBeLessThan(-1);
});
