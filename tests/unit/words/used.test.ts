import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { screens } from '../../../core/words/en/screens/index.ts';
import { handoverPhrases } from '../../../core/words/index.ts';
import { sourceFiles } from '../../layers/import-graph.ts';

const project = new URL('../../..', import.meta.url).pathname;
const isOfALanguage = (path: string) => /^core\/words\/(en|de)\//.test(path);

/** Every name that stands in the sources, the words of the languages left out. */
const named = new Set(
  ['core', 'electron', 'renderer']
    .flatMap((folder) => sourceFiles(project, folder))
    .filter((path) => !isOfALanguage(path))
    .flatMap((path) => readFileSync(join(project, path), 'utf8').match(/[A-Za-z][\w]*/g) ?? []),
);

/** Names of all words of a tree, with the path that leads to each. */
function namesIn(words: unknown, path: string): { path: string; name: string }[] {
  if (typeof words !== 'object' || words === null || Array.isArray(words)) return [];
  return Object.entries(words).flatMap(([name, part]) => [
    { path: `${path}.${name}`, name },
    ...namesIn(part, `${path}.${name}`),
  ]);
}

it('every word of the screens and of the summary is asked for by its name', () => {
  const all = [...namesIn(screens, 'screens'), ...namesIn(handoverPhrases('en'), 'handover')];
  expect(all.length).toBeGreaterThan(1000);
  const unused = all.filter(({ name }) => /^[A-Za-z]\w*$/.test(name) && !named.has(name));
  expect(unused.map(({ path }) => path)).toEqual([]);
});
