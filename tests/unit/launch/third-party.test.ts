import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { thirdParties, thirdPartyNotice, unknownLicences } from '../../../electron/launch/third-party.ts';

const project = new URL('../../..', import.meta.url).pathname;
type Locked = { version: string; integrity?: string; resolved?: string; hasInstallScript?: boolean };
const lock = JSON.parse(readFileSync(join(project, 'package-lock.json'), 'utf8'));
const packages = Object.entries(lock.packages as Record<string, Locked>).filter(([path]) => path !== '');

describe('what the built program contains', () => {
  const all = thirdParties(project);

  it('is known by name, with a licence that lets us carry it', () => {
    expect(all.length).toBeGreaterThan(30);
    expect(unknownLicences(all)).toEqual([]);
    const stranger = { name: 'x', version: '1.0.0', licence: 'not stated', text: null };
    expect(unknownLicences([...all, stranger])).toEqual([stranger]);
    const { dependencies } = JSON.parse(readFileSync(join(project, 'package.json'), 'utf8'));
    const names = all.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(Object.keys(dependencies)));
  });

  it('brings its licences along', () => {
    const notice = thirdPartyNotice(all);
    for (const { name, version } of all) expect(notice).toContain(`${name} ${version} (`);
    // These name the MIT licence in their package.json and hold no text of it; the notice says so.
    const without = ['client-only', 'javascript-natural-sort', 'seedrandom'];
    expect(all.filter(({ text }) => text === null).map(({ name }) => name)).toEqual(without);
  });
});

describe('what is installed for development', () => {
  it('is fixed by its content, wherever it is fetched from', () => {
    expect(packages.filter(([, { integrity }]) => !integrity?.startsWith('sha512-'))).toEqual([]);
    // An address in the lock file would tie a clone to one registry.
    expect(packages.filter(([, { resolved }]) => resolved !== undefined)).toEqual([]);
  });

  it('runs no script of its own but the one that fetches the pinned Node', () => {
    const { allowScripts } = JSON.parse(readFileSync(join(project, 'package.json'), 'utf8'));
    expect(allowScripts).toEqual({ node: true });
  });
});
