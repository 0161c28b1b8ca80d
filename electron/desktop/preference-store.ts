import type Store from 'electron-store';
import { type Preferences, PreferencesSchema } from '../../core/contract/index.ts';
import type { PreferenceKeeper } from '../host/index.ts';
import type { WindowState } from './workbench-window.ts';

type Json = Record<string, unknown>;

/** The two calls of electron-store that we use, so that tests need no Electron. */
export type StoreLike = Pick<Store<Json>, 'store'>;

/**
 * Preferences in electron-store, in the very file that the other shells use. A damaged one means defaults:
 * they cost a click to lose.
 */
export function preferencesInStore(store: StoreLike): PreferenceKeeper {
  const get = async (): Promise<Preferences> =>
    PreferencesSchema.safeParse(store.store).data ?? PreferencesSchema.parse({});
  return {
    get,
    set: async (patch) => {
      const given = Object.entries(patch).filter(([, value]) => value !== undefined);
      const next = PreferencesSchema.parse({ ...(await get()), ...Object.fromEntries(given) });
      store.store = next;
      return next;
    },
  };
}

/** Where the window was left; belongs to this machine and this shell only. */
export function windowStateInStore(store: StoreLike): {
  read(): WindowState;
  write(state: WindowState): void;
} {
  return {
    read() {
      const { bounds, isMaximized } = store.store as Partial<WindowState>;
      const sizes = bounds ? [bounds.x, bounds.y, bounds.width, bounds.height] : [];
      const isSound = sizes.length === 4 && sizes.every((one) => Number.isInteger(one));
      return { bounds: isSound && bounds ? bounds : null, isMaximized: isMaximized === true };
    },
    write(state) {
      store.store = { ...state };
    },
  };
}
