import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import { RunRecordSchema, readSession, SessionSchema } from '../../../core/session/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { languages } from '../../../core/words/index.ts';
import { makeHandover } from '../../../electron/host/make-handover.ts';

const sample = new URL('../../../sample-sessions/fenmoor-hatch/', import.meta.url).pathname;
const hostile = '</title></style><script>alert(1)</script><img src=x onerror=alert(1)>"\'`';
const json = (path: string): Json => JSON.parse(readFileSync(join(sample, path), 'utf8'));

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

/** Where the strings of a JSON value stand. */
function stringsOf(value: Json, path: readonly string[] = []): (readonly string[])[] {
  if (typeof value === 'string') return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => stringsOf(inner, [...path, key]));
}

function withHostile(value: Json, [key, ...rest]: readonly string[]): Json {
  if (key === undefined) return hostile;
  const copy = (Array.isArray(value) ? [...value] : { ...(value as object) }) as Record<string, Json>;
  copy[key] = withHostile(copy[key] ?? null, rest);
  return copy as Json;
}

/** Every string that the schema lets be any text, made hostile. */
function poisoned(value: Json, fits: (candidate: Json) => boolean): { value: Json; fields: number } {
  let fields = 0;
  const whole = stringsOf(value).reduce((before, path) => {
    const after = withHostile(before, path);
    if (!fits(after)) return before;
    fields++;
    return after;
  }, value);
  return { value: whole, fields };
}

describe('markup in every text of a session', () => {
  it('reaches the handover as text, in both languages', async () => {
    const session = poisoned(json('session.json'), (c) => SessionSchema.safeParse(c).success);
    expect(session.fields).toBeGreaterThan(20);
    const [id = ''] = readdirSync(join(sample, 'runs'));
    const run = poisoned(json(`runs/${id}/run.json`), (c) => RunRecordSchema.safeParse(c).success);
    expect(run.fields).toBeGreaterThan(0);
    const state = {
      session: unwrap(readSession(session.value)).session,
      runs: { [id]: RunRecordSchema.parse(run.value) },
    };
    for (const language of languages) {
      const usual = { language, units: metricUnits };
      const { html } = await makeHandover(state, new Map(), usual, { date: '2027-03-14' });
      expect(html).toContain('&lt;script&gt;');
      expect(html).not.toMatch(/<(?:script|img|iframe|object|embed|link|base|form|foreignObject)\b/i);
      expect(html).not.toMatch(/<[^>]*\s(?:src|href|xlink:href|on\w+|srcdoc|action)\s*=/i);
      expect(html).not.toMatch(/javascript:|@import|url\((?!#|data:font\/woff2;base64,)/i);
      expect(html.match(/<\/style>/g)).toHaveLength(html.match(/<style/g)?.length ?? 0);
      expect(html.match(/<\/title>/g)).toHaveLength(html.match(/<title/g)?.length ?? 0);
    }
  });
});
