import { mkdir, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { type Preferences, PreferencesSchema } from '../../core/contract/index.ts';
import { writeAtomic } from '../store/index.ts';

/** What is to change; a key without a value changes nothing. */
export type PreferencesPatch = { readonly [K in keyof Preferences]?: Preferences[K] | undefined };

function merged(current: Preferences, patch: PreferencesPatch): Preferences {
  const given = Object.entries(patch).filter(([, value]) => value !== undefined);
  return PreferencesSchema.parse({ ...current, ...Object.fromEntries(given) });
}

/** Where preferences live: a file for the browser's shell, electron-store on the desktop, memory for the terminal. */
export type PreferenceKeeper = {
  readonly get: () => Promise<Preferences>;
  readonly set: (patch: PreferencesPatch) => Promise<Preferences>;
};

/**
 * Preferences in one JSON file. A missing or damaged file means defaults: they cost a click to lose, and a
 * fault there must not keep a session shut.
 */
export function preferencesInFile(path: string): PreferenceKeeper {
  async function get(): Promise<Preferences> {
    let json: unknown = {};
    try {
      json = JSON.parse(await readFile(path, 'utf8'));
    } catch {
      return PreferencesSchema.parse({});
    }
    const parsed = PreferencesSchema.safeParse(json);
    return parsed.success ? parsed.data : PreferencesSchema.parse({});
  }
  return {
    get,
    set: async (patch) => {
      const next = merged(await get(), patch);
      await mkdir(dirname(path), { recursive: true });
      await writeAtomic(path, `${JSON.stringify(next, null, 2)}\n`);
      return next;
    },
  };
}

/** Preferences for one process only, for scripts and tests. */
export function preferencesInMemory(initial: Partial<Preferences> = {}): PreferenceKeeper {
  let current = PreferencesSchema.parse(initial);
  return {
    get: async () => current,
    set: async (patch) => {
      current = merged(current, patch);
      return current;
    },
  };
}
