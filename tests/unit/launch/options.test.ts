import { expect, it } from 'vitest';
import { startOptions } from '../../../electron/launch/options.ts';

it('npm start needs no options, and takes a few', () => {
  const none = { port: 0, session: undefined, isQuiet: false, wantsBrowser: false, wantsHelp: false };
  expect(startOptions([])).toEqual(none);
  expect(startOptions(['--session', 'a b', '--port=8080', '--no-open', '--browser'])).toEqual({
    ...none,
    session: 'a b',
    port: 8080,
    isQuiet: true,
    wantsBrowser: true,
  });
});

it.each([
  [['--port', 'x']],
  [['--port', '70000']],
  [['--port=1.5']],
  [['--prot', '1']],
  [['--session']],
  [['stray']],
])('%j is answered with what is wrong', (words) => {
  expect(typeof startOptions(words)).toBe('string');
});
