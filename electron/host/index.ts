export { checkSession, repairSession, writeAtomic } from '../store/index.ts';
export { createHost } from './create-host.ts';
export type { HostSetting } from './handlers.ts';
export { newSession } from './new-session.ts';
export { type PreferenceKeeper, preferencesInFile, preferencesInMemory } from './preference-keeper.ts';
