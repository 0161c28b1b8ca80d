/** A log named by its path on the host's machine. */
export type PathLog = { readonly name: string; readonly path: string };

/** A log on its way in: bytes that the page holds, or a path that only the host can read. */
export type Incoming = File | PathLog;

/** Tells two logs of one list apart. */
export function keyOf(log: Incoming): string {
  return log instanceof File ? `${log.name} ${log.size}` : log.path;
}

/** A log as a list of logs names it. */
export function namedLog(log: Incoming): { readonly key: string; readonly name: string } {
  return { key: keyOf(log), name: log.name };
}
