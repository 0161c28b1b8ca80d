import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { projectFolder } from './pinned-node.mjs';

export type ThirdParty = {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** Its licence as it stands in the package; null where the package holds none. */
  readonly text: string | null;
};

/** Licences that let a program under the MIT licence carry the work, by their SPDX names. */
const permissive: ReadonlySet<string> = new Set([
  'MIT',
  'ISC',
  '0BSD',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  'OFL-1.1',
  '(MIT OR CC0-1.0)',
]);

/** Those whose licence nobody has looked at yet. */
export function unknownLicences(all: readonly ThirdParty[]): readonly ThirdParty[] {
  return all.filter(({ licence }) => !permissive.has(licence));
}

type Locked = { readonly version: string; readonly license?: string; readonly dev?: boolean };

/** Every package that the built program may contain: all that are not for development only, by name. */
export function thirdParties(project: string): readonly ThirdParty[] {
  const lock = JSON.parse(readFileSync(join(project, 'package-lock.json'), 'utf8'));
  return Object.entries(lock.packages as Record<string, Locked>)
    .filter(([path, { dev }]) => path !== '' && !dev && existsSync(join(project, path)))
    .map(([path, { version, license }]) => ({
      name: path.replace(/^.*node_modules\//, ''),
      version,
      licence: license ?? 'not stated',
      text: licenceText(join(project, path)),
    }))
    .sort((a, b) => a.name.localeCompare(b.name));
}

/** The list as it goes along with the built program, as most licences ask for. */
export function thirdPartyNotice(all: readonly ThirdParty[]): string {
  const parts = all.map(({ name, version, licence, text }) =>
    [`${name} ${version} (${licence})`, text?.trim() ?? 'The package holds no licence text.'].join('\n\n'),
  );
  return ['Onechange contains the work of others, under these licences.', ...parts].join(
    `\n\n${'-'.repeat(72)}\n\n`,
  );
}

function licenceText(folder: string): string | null {
  const file = readdirSync(folder).find((name) => /^(licen[cs]e|copying|ofl)/i.test(basename(name)));
  return file === undefined ? null : readFileSync(join(folder, file), 'utf8');
}

if (import.meta.main) {
  const all = thirdParties(projectFolder);
  for (const { name, version, licence } of all) console.log(`${licence.padEnd(18)} ${name} ${version}`);
  const unknown = unknownLicences(all);
  for (const { name, licence } of unknown) console.error(`Not looked at yet: ${name} (${licence})`);
  process.exitCode = unknown.length === 0 ? 0 : 1;
}
