export type { Limits } from './limits.ts';
export { startWebShell, type WebShell, type WebShellOptions } from './start-web-shell.ts';
