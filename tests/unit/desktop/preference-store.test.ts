import { expect, it } from 'vitest';
import { defaultPreferences } from '../../../core/contract/index.ts';
import { preferencesInStore, windowStateInStore } from '../../../electron/desktop/preference-store.ts';

it('preferences are kept, and a damaged store means defaults', async () => {
  const store = { store: {} };
  const preferences = preferencesInStore(store);
  expect(await preferences.get()).toEqual(defaultPreferences);
  await preferences.set({ language: 'de' });
  expect(await preferencesInStore(store).get()).toEqual({ ...defaultPreferences, language: 'de' });
  expect(await preferencesInStore({ store: { language: 'xx' } }).get()).toEqual(defaultPreferences);
});

it('the window’s place is kept, and a damaged one means the ordinary place', () => {
  const store = { store: {} };
  const bounds = { x: 1, y: 2, width: 3, height: 4 };
  windowStateInStore(store).write({ bounds, isMaximized: true });
  expect(windowStateInStore(store).read()).toEqual({ bounds, isMaximized: true });
  for (const damaged of [{}, { bounds: 'left' }, { bounds: { x: 1 } }, { bounds: { ...bounds, x: 'a' } }])
    expect(windowStateInStore({ store: damaged }).read()).toEqual({ bounds: null, isMaximized: false });
});
