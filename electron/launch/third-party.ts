import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';

export type ThirdParty = {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** Its licence as it stands in the package; null where the package holds none. */
  readonly text: string | null;
};

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
